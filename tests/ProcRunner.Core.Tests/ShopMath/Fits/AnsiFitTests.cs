using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Fits;

public class AnsiFitTests
{
    // ANSI B4.1, as printed in Machinery's Handbook, 27th edition p. 663 Table 11, and 31st edition pp. 658 to 660. Thousandths of an
    // inch: least and most interference, hole, shaft high and low; the interference printed is a second opinion on the limits.
    [Theory]
    [InlineData(
        0.40,
        0.56,
        "FN1 0.1-0.8 0.4 0.8 0.5",
        "FN2 0.5-1.6 0.7 1.6 1.2",
        "FN4 0.7-1.8 0.7 1.8 1.4",
        "FN5 0.6-2.3 1.0 2.3 1.6"
    )]
    [InlineData(
        0.56,
        0.71,
        "FN1 0.2-0.9 0.4 0.9 0.6",
        "FN2 0.5-1.6 0.7 1.6 1.2",
        "FN4 0.7-1.8 0.7 1.8 1.4",
        "FN5 0.8-2.5 1.0 2.5 1.8"
    )]
    [InlineData(
        0.71,
        0.95,
        "FN1 0.2-1.1 0.5 1.1 0.7",
        "FN2 0.6-1.9 0.8 1.9 1.4",
        "FN4 0.8-2.1 0.8 2.1 1.6",
        "FN5 1.0-3.0 1.2 3.0 2.2"
    )]
    [InlineData(
        0.95,
        1.19,
        "FN1 0.3-1.2 0.5 1.2 0.8",
        "FN2 0.6-1.9 0.8 1.9 1.4",
        "FN3 0.8-2.1 0.8 2.1 1.6",
        "FN4 1.0-2.3 0.8 2.3 1.8",
        "FN5 1.3-3.3 1.2 3.3 2.5"
    )]
    [InlineData(
        1.19,
        1.58,
        "FN1 0.3-1.3 0.6 1.3 0.9",
        "FN2 0.8-2.4 1.0 2.4 1.8",
        "FN3 1.0-2.6 1.0 2.6 2.0",
        "FN4 1.5-3.1 1.0 3.1 2.5",
        "FN5 1.4-4.0 1.6 4.0 3.0"
    )]
    [InlineData(
        1.58,
        1.97,
        "FN1 0.4-1.4 0.6 1.4 1.0",
        "FN2 0.8-2.4 1.0 2.4 1.8",
        "FN3 1.2-2.8 1.0 2.8 2.2",
        "FN4 1.8-3.4 1.0 3.4 2.8",
        "FN5 2.4-5.0 1.6 5.0 4.0"
    )]
    [InlineData(
        1.97,
        2.56,
        "FN1 0.6-1.8 0.7 1.8 1.3",
        "FN2 0.8-2.7 1.2 2.7 2.0",
        "FN3 1.3-3.2 1.2 3.2 2.5",
        "FN4 2.3-4.2 1.2 4.2 3.5",
        "FN5 3.2-6.2 1.8 6.2 5.0"
    )]
    [InlineData(1.19, 1.97, "LN2 0-1.6 1.0 1.6 1.0", "LN3 0.4-2.0 1.0 2.0 1.4")]
    public void Every_printed_cell_holds_from_over_to_up_to(double over, double upTo, params string[] cells)
    {
        foreach (string[] cell in cells.Select(cell => cell.Split(' ')))
        {
            string[] range = cell[1].Split('-');
            foreach (decimal size in new[] { (decimal)over + 0.0001m, (decimal)upTo })
            {
                AnsiFit fit = Known.Value(AnsiFit.Find(Known.Of(FormattableString.Invariant($"{size} in")), cell[0]));

                Assert.Equal(Known.Of($"{range[0]} thou"), fit.Range.Least);
                Assert.Equal(Known.Of($"{range[1]} thou"), fit.Range.Most);
                Assert.Equal(Known.Of("0 thou"), fit.Hole.Lower);
                Assert.Equal(Known.Of($"{cell[2]} thou"), fit.Hole.Upper);
                Assert.Equal(Known.Of($"{cell[3]} thou"), fit.Shaft.Upper);
                Assert.Equal(Known.Of($"{cell[4]} thou"), fit.Shaft.Lower);
            }
        }
    }

    [Theory]
    [InlineData("0.40 in", "FN1", "nominal")]
    [InlineData("2.5601 in", "FN1", "nominal")]
    [InlineData("0.95 in", "FN3", "nominal")]
    [InlineData("1.19 in", "LN2", "nominal")]
    [InlineData("1.9701 in", "LN3", "nominal")]
    [InlineData("1 in", "FN6", "class")]
    [InlineData("1 in", "fn1", "class")]
    public void A_cell_that_is_not_printed_is_refused(string size, string @class, string argument) =>
        Assert.Equal(argument, Known.Fault(AnsiFit.Find(Known.Of(size), @class)).Argument);
}
