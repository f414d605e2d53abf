using System.Globalization;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Shop;

namespace ProcRunner.Runs.Doubts;

/// <summary>A reading with all that it is held against before it is taken. Amounts are in base units.</summary>
internal sealed record Seen
{
    // A repeated reading may differ by this many of the last digits that its unit is read to. Common practice, no source.
    private const int LastDigits = 5;

    public required Deciding On { get; init; }

    public required At At { get; init; }

    public required Characteristic Of { get; init; }

    public required Limits Limits { get; init; }

    public required TakenReading Reading { get; init; }

    public required Gauge? Gauge { get; init; }

    /// <summary>What the readout gives after a cut, or the last reading when nothing was cut since; null elsewhere.</summary>
    public required Exact? Predicted { get; init; }

    public RunState State => On.State;

    public Step Step => On.StepOf(At);

    public Unit Unit => Of.UnitOn(On.Plan.Head);

    /// <summary>The value that counts.</summary>
    public Rational Value => Exact.Of(Reading.Value).Value;

    /// <summary>
    /// The latest value here that another step took and nothing has moved since, or null. One that this very step took
    /// counts for nothing: it is being taken again. Nor does any to a correction: it may be of an entry before that one.
    /// </summary>
    public ValueRecord? Before =>
        !On.Corrects
        && State.Value(Of.Name, Of.OfHead ? Runs.At.Head : At.Position) is { Stale: false } value
        && value.ByStep != At.Step
            ? value
            : null;

    /// <summary>
    /// What two readings of one thing may differ by: both at the ends of the gauge's uncertainty, or five of the last digit
    /// that the unit is read to, whichever is more.
    /// </summary>
    public Rational Noise
    {
        get
        {
            decimal digits = new(LastDigits, 0, 0, isNegative: false, (byte)Show.DigitsOf(Unit));
            Rational least = Base(new Quantity(digits, Unit));
            Rational both =
                Gauge is { } gauge && gauge.Uncertainty.Dimension == Of.Dimension
                    ? Base(gauge.Uncertainty) * Rational.FromInteger(2)
                    : Rational.Zero;
            return both > least ? both : least;
        }
    }

    /// <summary>The last value's name in words.</summary>
    public static string NameOf(ValueRecord before) =>
        before.ByStep == before.AsFoundBy ? "as found" : "the last reading";

    /// <summary>An amount in the reading's unit, with it.</summary>
    public string Text(Rational amount) => Show.Plain(new Exact(amount, Of.Dimension), Unit);

    /// <summary>The declared distance, or the usual one.</summary>
    public static Rational By(DoubtRule rule, Rational usual) => rule.By is { } by ? Base(by) : usual;

    /// <summary>A quantity in its base unit.</summary>
    public static Rational Base(Quantity quantity) => Exact.Of(quantity).Value;

    /// <summary>How far apart two amounts are.</summary>
    public static Rational Apart(Rational one, Rational other) => (one - other).Abs();

    /// <summary>A list of names, cut short.</summary>
    public static string Names(IReadOnlyList<string> names)
    {
        const int Most = 4;
        return names.Count <= Most
            ? string.Join(", ", names)
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{string.Join(", ", names.Take(Most))} and {names.Count - Most} more"
            );
    }
}
