using ProcRunner.Quantities;

namespace ProcRunner.Records.Drawings;

/// <summary>Where quantities fall on a stretch of paper. Amounts are compared in one unit; a drawing needs no exactness.</summary>
internal sealed class Scale
{
    private readonly double _least;
    private readonly double _most;
    private readonly double _from;
    private readonly double _to;

    private Scale(double least, double most, double from, double to) =>
        (_least, _most, _from, _to) = (least, most, from, to);

    /// <summary>A scale that holds all of these with some room on both sides.</summary>
    /// <param name="from">Where the least lies.</param>
    /// <param name="to">Where the greatest lies.</param>
    /// <param name="values">What is to fit; at least one.</param>
    public static Scale Over(double from, double to, IEnumerable<Quantity?> values)
    {
        double[] all = [.. values.OfType<Quantity>().Select(Number)];
        (double least, double most) = (all.Min(), all.Max());
        double room = most > least ? (most - least) * 0.06 : Math.Max(Math.Abs(most) * 0.1, 1e-6);
        return new Scale(least - room, most + room, from, to);
    }

    /// <summary>A scale from zero to the greatest of these.</summary>
    public static Scale FromZero(double from, double to, IEnumerable<Quantity?> values)
    {
        double most = values.OfType<Quantity>().Select(Number).DefaultIfEmpty(1).Max();
        return new Scale(0, most > 0 ? most * 1.05 : 1, from, to);
    }

    /// <summary>Where a quantity falls.</summary>
    public double Of(Quantity quantity) => _from + ((_to - _from) * (Number(quantity) - _least) / (_most - _least));

    private static double Number(Quantity quantity) => Exact.Of(quantity).Value.ToDouble();
}
