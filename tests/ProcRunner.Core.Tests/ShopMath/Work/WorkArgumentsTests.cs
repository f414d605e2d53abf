using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Work;

public class WorkArgumentsTests
{
    private static readonly WorkParameter[] Parameters =
    [
        new("size", new WorkTakes.Amount(Units.Inch), "a size"),
        new("readings", new WorkTakes.Amounts(Units.Millimetre, 2), "some sizes", IsOptional: true),
        new("way", new WorkTakes.Word(["up", "down"]), "a way", IsOptional: true),
        new("count", new WorkTakes.Amount(Units.One), "a number", IsOptional: true),
        new("load", new WorkTakes.Amount(Units.Newton), "a load", IsOptional: true),
    ];

    [Theory]
    [InlineData("size=1 in; readings=8.1 8.2 mm", "8.1 mm, 8.2 mm")]
    [InlineData("size=1 in; readings=8.1mm 8.2mm", "8.1 mm, 8.2 mm")]
    [InlineData("size=1 in; readings=0.31 0.32 in 8.2 mm", "0.31 in, 0.32 in, 8.2 mm")]
    [InlineData("size=1 in; readings=-1 2mm", "-1 mm, 2 mm")]
    [InlineData("size=1 in; readings=8.1, 8.2 mm", "8.1 mm, 8.2 mm")]
    [InlineData("size=1 in; readings=8.1 mm, 8.2 mm", "8.1 mm, 8.2 mm")]
    public void A_unit_counts_for_the_numbers_before_it(string given, string read) =>
        Assert.Equal(read, string.Join(", ", Known.Value(Read(given)).Quantities("readings")));

    [Theory]
    [InlineData("size=1", "size", "no unit")]
    [InlineData("size=1 N", "size", "N is a unit of force")]
    [InlineData("size=1 2 in", "size", "one value")]
    [InlineData("size=", "size", "one value")]
    [InlineData("size=1,5 in", "size", "1,5 is no number")]
    [InlineData("size=abc", "size", "no number")]
    [InlineData("size=NaN in", "size", "no number")]
    [InlineData("size=1e3 in", "size", "no number")]
    [InlineData("size=1 in; size=2 in", "size", "once")]
    [InlineData("size=1 in; seize=2 in", "seize", "size, readings, way")]
    [InlineData("size=1 in; read=1 2 mm", "read", "did you mean readings? ")]
    [InlineData("seat-size=1 in", "seat-size", "did you mean size? ")]
    [InlineData("readings=1 2 mm", "size", "a size")]
    [InlineData("size=1 in; readings=1 mm", "readings", "2 or more")]
    [InlineData("size=1 in; readings=1,5 2,5 mm", "readings", "no number")]
    [InlineData("size=1000000000000 in", "size", "too many digits")]
    [InlineData("size=0.0000000000000001 in", "size", "too many digits")]
    [InlineData("size=1 in; way=left", "way", "up, down")]
    [InlineData("size=1 in; count=1 in", "count", "in is a unit of length")]
    public void What_is_wrong_is_named(string given, string argument, string why)
    {
        ShopFault fault = Known.Fault(Read(given));

        Assert.Equal(argument, fault.Argument);
        Assert.Contains(why, fault.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("size=1 in", true)]
    [InlineData("size=1 mm; load=1 lbf", false)]
    [InlineData("load=1 lbf; size=1 mm", false)]
    [InlineData("size=3 thou; load=1 N", true)]
    public void The_first_length_says_which_units_results_are_in(string given, bool isInch) =>
        Assert.Equal(isInch, Known.Value(Read(given)).IsInch);

    [Fact]
    public void Numbers_are_kept_as_they_were_typed()
    {
        WorkArguments read = Known.Value(Read("size=0.0520 in; count=-0.5"));

        Assert.Equal("0.0520 in", read.Entered("size").ToString());
        Assert.Equal("0.0520 in", read.Texts["size"]);
        Assert.Equal(1.3208, read.In("size", Units.Millimetre));
        Assert.Equal(-0.5, read.In("count", Units.One));
        Assert.Equal(7, read.In("load", Units.Newton, 7));
        Assert.Empty(read.Amounts("readings"));
        Assert.Equal("", read.Word("way"));
    }

    private static ShopResult<WorkArguments> Read(string given) =>
        WorkArguments.Read(Parameters, new WorkExample(given, "", "").Arguments);
}
