using System.Globalization;
using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Work;

/// <summary>Takes results apart for a test.</summary>
internal static class Known
{
    public static T Value<T>(ShopResult<T> result)
    {
        bool known = result.TryGet(out T? value, out ShopFault? fault);
        Assert.True(known, fault?.ToString());
        return value!;
    }

    public static ShopFault Fault<T>(ShopResult<T> result)
    {
        Assert.False(result.TryGet(out T? value, out ShopFault? fault), value?.ToString());
        return fault!;
    }

    public static Exact Of(string quantity)
    {
        Assert.True(Quantity.TryParse(quantity, out Quantity read), quantity);
        return Exact.Of(read);
    }

    public static Exact Millimetres(decimal value) => Exact.Of(new Quantity(value, Units.Millimetre));

    /// <summary>Holds that a double has all the digits of a printed figure, of which it keeps no more than about 15.</summary>
    public static void Printed(string printed, double value)
    {
        int places = printed.Contains('.', StringComparison.Ordinal)
            ? printed.Length - printed.IndexOf('.', StringComparison.Ordinal) - 1
            : 0;
        double expected = double.Parse(printed, CultureInfo.InvariantCulture);
        double slack = Math.Max(0.5 * Math.Pow(10, -places), Math.Abs(expected) * 1e-15);
        Assert.InRange(value, expected - slack, expected + slack);
    }
}
