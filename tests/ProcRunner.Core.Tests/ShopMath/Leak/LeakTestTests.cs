using FsCheck.Xunit;
using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Leak;

public class LeakTestTests
{
    // Two makers' published procedures: of 80 psi (552 kPa) at least 60 psi (414 kPa) must hold, which is 25 %.
    [Theory]
    [InlineData("80 psi", "60 psi", "25 %")]
    [InlineData("552 kPa", "414 kPa", "25 %")]
    [InlineData("80 psi", "80 psi", "0 %")]
    [InlineData("80 psi", "0 psi", "100 %")]
    public void Leak_down(string supply, string held, string part) =>
        WorkBench.Gives("leak-down", $"supply={supply}; held={held}", "leak-down=" + part);

    // 25, 20 and 15 inHg in kPa from conventional mercury, NIST SP 811 (2008), appendix B.8: 84.659716, 67.727773, 50.795830.
    [Theory]
    [InlineData("25 inHg", "84.659716 kPa")]
    [InlineData("20 inHg", "67.727773 kPa")]
    [InlineData("15 inHg", "50.795830 kPa")]
    public void A_share_is_the_same_in_both_units(string inch, string metric)
    {
        Assert.True(Known.Of(inch).TryToQuantity(Units.Kilopascal, 6, Rounding.Nearest, out Quantity kilopascals));
        Assert.Equal(metric, kilopascals.ToString());
        Exact one = Known.Value(LeakTest.SealShare(Known.Of(inch), Known.Of("25 inHg")));
        Exact two = Known.Value(LeakTest.SealShare(Known.Of(metric), Known.Of("84.659716 kPa")));
        Assert.InRange((one / two).Value.ToDouble(), 1 - 1e-7, 1 + 1e-7);
    }

    // Q = V dP/dt: 0.2 l, 25 to 20 inHg (16.931943 kPa) in 10 s is 0.338639 Pa m3/s; worked by hand.
    [Theory]
    [InlineData("start=25 inHg; end=20 inHg")]
    [InlineData("start=84.659716 kPa; end=67.727773 kPa")]
    [InlineData("start=20 inHg; end=25 inHg")]
    public void Leak_rate(string readings) =>
        WorkBench.Gives("leak-rate", "volume=200 cm3; time=10 s; " + readings, "leak rate=0.338639 Pa\u00B7m3/s");

    // The loss of that example, 25 less 20 inHg.
    [Fact]
    public void A_loss_of_vacuum_in_kilopascals()
    {
        Exact lost = Known.Of("25 inHg") - Known.Of("20 inHg");

        Assert.True(lost.TryToQuantity(Units.Kilopascal, 6, Rounding.Nearest, out Quantity found));
        Assert.Equal("16.931943 kPa", found.ToString());
    }

    [Property]
    public void What_leaks_and_what_holds_are_the_whole(ushort supply, ushort held)
    {
        int all = 1 + Math.Max(supply, held);
        Exact leak = Known.Value(LeakTest.LeakDown(Psi(all), Psi(held)));
        Exact share = Known.Value(LeakTest.SealShare(Psi(held), Psi(all)));

        Assert.Equal(Rational.One, leak.Value + share.Value);
    }

    [Theory]
    [InlineData("leak-down", "supply=0 psi; held=0 psi", "supply")]
    [InlineData("leak-down", "supply=80 psi; held=81 psi", "held")]
    [InlineData("leak-down", "supply=80 psi; held=-1 psi", "held")]
    [InlineData("seal-share", "held=20 inHg; blocked=0 inHg", "blocked")]
    [InlineData("seal-share", "held=26 inHg; blocked=25 inHg", "held")]
    [InlineData("leak-rate", "volume=0 cm3; start=25 inHg; end=20 inHg; time=10 s", "volume")]
    [InlineData("leak-rate", "volume=200 cm3; start=25 inHg; end=20 inHg; time=0 s", "time")]
    public void Readings_that_can_not_be_are_refused(string function, string given, string argument) =>
        Assert.Equal(argument, WorkBench.Fault(function, given).Argument);

    private static Exact Psi(int value) => Exact.Of(new Quantity(value, Units.Psi));
}
