using ProcRunner.Quantities;
using ProcRunner.Shop;

namespace ProcRunner.ShopMath;

/// <summary>
/// Depths and the numbers of a depth readout, one into the other, for any unit, sense, doubling and way of zeroing.
/// </summary>
/// <remarks>
/// Depth d is square to the deck, positive into the head; the tool travels along the guide axis, which leans from the
/// deck's normal by phi. d' = d + s cos(phi) for a travel s (plane geometry). A readout that grows deeper shows
/// n = set + k s, one that grows upward n = set - k s, with k = 2 where it shows the diameter, else 1.
/// Everything is exact but cos(phi) for phi other than 0, which is rounded to 12 significant digits.
/// </remarks>
/// <param name="Readout">How the readout is set up.</param>
/// <param name="GuideAngle">phi, degrees; 0 to below 90.</param>
public sealed record ReadoutMaths(Readout Readout, decimal GuideAngle)
{
    private readonly Rational _cosine =
        GuideAngle == 0
            ? Rational.One
            : Rational
                .FromDouble(Math.Cos((double)GuideAngle * Math.PI / 180))
                .RoundToStep(Rational.FromInteger(10).Pow(-12), Rounding.Nearest);

    private Rational Sense => Rational.FromInteger(Readout.GrowsDeeper ? 1 : -1);

    private Rational Doubling => Rational.FromInteger(Readout.ShowsDiameter ? 2 : 1);

    /// <summary>
    /// The number to set the readout to at touch-off: 0, or where the shop presets it, the measured depth along the
    /// axis, so that the readout reads depth itself. Rounded to the readout's step.
    /// </summary>
    /// <param name="measured">The depth measured there.</param>
    public Quantity NumberToSet(Exact measured) =>
        Readout.Preset && !Readout.StepMode
            ? Number(Sense * Doubling * measured.In(Readout.Unit) / _cosine, Rounding.Nearest)
            : Number(Rational.Zero, Rounding.Nearest);

    /// <summary>The travel along the axis from one depth to another, in the readout's unit: (to - from) / cos(phi); negative when the second is shallower.</summary>
    /// <param name="from">Depth, square to the deck.</param>
    /// <param name="to">Depth, square to the deck.</param>
    public Rational TravelFor(Exact from, Exact to) => (to.In(Readout.Unit) - from.In(Readout.Unit)) / _cosine;

    /// <summary>The depth that a travel leads to: from + travel x cos(phi).</summary>
    /// <param name="from">Depth, square to the deck.</param>
    /// <param name="travel">Along the axis, in the readout's unit.</param>
    public Exact DepthAfter(Exact from, Rational travel) =>
        new(Readout.Unit.ToBase(from.In(Readout.Unit) + (travel * _cosine)), from.Dimension);

    /// <summary>
    /// The number that the readout shows after a travel from where it was set, rounded shallow to its step: never
    /// deeper than asked.
    /// </summary>
    /// <param name="set">The number it showed at no travel.</param>
    /// <param name="travel">Travel in the readout's unit.</param>
    public Quantity NumberAt(Quantity set, Rational travel)
    {
        Rational number = Rational.FromDecimal(set.Value) + (Sense * Doubling * travel);
        return Number(number, Readout.GrowsDeeper ? Rounding.Down : Rounding.Up);
    }

    /// <summary>The travel that a number means.</summary>
    /// <param name="set">The number it showed at no travel.</param>
    /// <param name="shown">The number it shows.</param>
    public Rational TravelAt(Quantity set, Quantity shown)
    {
        Rational number = Exact.Of(shown).In(Readout.Unit);
        return (number - Rational.FromDecimal(set.Value)) * Sense / Doubling;
    }

    /// <summary>One step of the readout as travel, in its unit.</summary>
    public Rational StepOfTravel => Rational.FromDecimal(Readout.Step) / Doubling;

    private Quantity Number(Rational value, Rounding mode)
    {
        Rational onStep = value.RoundToStep(Rational.FromDecimal(Readout.Step), mode);
        return new Quantity(onStep.Round(Readout.Step.Scale, Rounding.Nearest), Readout.Unit);
    }
}
