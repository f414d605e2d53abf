using ProcRunner.Problems;
using ProcRunner.Procedures;

namespace ProcRunner.Yaml.Tests;

public sealed class RecordNamesTests
{
    [Fact]
    public void Values_go_by_their_usual_names_unless_the_file_says_otherwise()
    {
        Procedure usual = Samples.LoadProcedure(Samples.Procedure).Value!;
        Assert.Equal("recession", usual.ValueShownAs(RecordRoles.Recession));
        Assert.Null(usual.ValueShownAs(RecordRoles.Margin));

        Loaded<Procedure> own = Samples.LoadProcedure(
            Samples.Procedure.Replace(
                "stages:\n",
                "build-record: {margin: recession, least clearance: clearance, for-the-builder: [clean the seat]}\nstages:\n",
                StringComparison.Ordinal
            )
        );
        Assert.Empty(own.Problems);
        Assert.Equal("recession", own.Value!.ValueShownAs(RecordRoles.Margin));
        Assert.Equal("clearance", own.Value!.ValueShownAs(RecordRoles.Clearance));
        Assert.Null(own.Value!.ValueShownAs(RecordRoles.Recession));
        Assert.Equal(["clean the seat"], own.Value!.ForTheBuilder);
    }
}
