using ProcRunner.Procedures;

namespace ProcRunner.Yaml.Tests;

public sealed class RecordNamesTests
{
    [Fact]
    public void A_revision_has_its_day_and_what_changed_when_the_file_says_so()
    {
        Assert.Null(Samples.LoadProcedure(Samples.Procedure).Value!.Revised);

        Loaded<Procedure> said = Samples.LoadProcedure(
            Samples.Procedure.Replace(
                "revision: 1\n",
                "revision: 2\nrevised: {on: 2026-02-28, what: seats are washed first}\n",
                StringComparison.Ordinal
            )
        );
        Assert.Empty(said.Problems);
        Assert.Equal(new Revised(new DateOnly(2026, 2, 28), "seats are washed first"), said.Value!.Revised);

        Loaded<Procedure> noDay = Samples.LoadProcedure(
            Samples.Procedure.Replace(
                "revision: 1\n",
                "revision: 2\nrevised: {on: 2026-02-29, what: seats are washed first}\n",
                StringComparison.Ordinal
            )
        );
        Assert.Equal("PR-Y10", Assert.Single(noDay.Problems).Code);
    }

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
