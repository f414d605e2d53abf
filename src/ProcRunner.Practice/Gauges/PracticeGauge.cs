using ProcRunner.Lessons;
using ProcRunner.Practice.Chances;
using ProcRunner.Practice.Heads;
using ProcRunner.Quantities;

namespace ProcRunner.Practice.Gauges;

/// <summary>
/// A gauge in an operator's hand: shows the truth with its resolution, bias and spread, the operator's feel, and now and then
/// a slip. Every taking has a stream of its own, so a reading is the same whatever was read before it.
/// </summary>
/// <param name="character">The gauge.</param>
/// <param name="key">The stream of chance of this head.</param>
public sealed class PracticeGauge(GaugeCharacter character, ulong key)
{
    private readonly ulong _key = SplitMix.Inside(key, character.Gauge.Kind);

    /// <summary>The gauge and how it behaves.</summary>
    public GaugeCharacter Character => character;

    /// <summary>Reads one dimension at some of its places, one after the other.</summary>
    /// <param name="head">The head.</param>
    /// <param name="dimension">What is read.</param>
    /// <param name="position">Index of the position.</param>
    /// <param name="places">The places, by index.</param>
    /// <param name="taking">How often this was taken before: another taking, another draw.</param>
    public GaugeReading[] Read(
        PracticeHead head,
        HeadDimension dimension,
        int position,
        IReadOnlyList<int> places,
        int taking
    )
    {
        ulong stream = SplitMix.Inside(
            SplitMix.Inside(_key, dimension.Name),
            ((ulong)(position + 2) << 32) + (ulong)taking
        );
        Chance chance = new(stream);
        Unit unit = character.Gauge.Resolution.Unit;
        double turn = character.Gauge.Turn is { } full ? Exact.Of(full).In(unit).ToDouble() : 0;
        bool turnOff = turn > 0 && chance.Happens(character.WrongTurns);
        bool notZeroed = chance.Happens(character.NotZeroed);
        double sign = chance.Happens(0.5) ? 1 : -1;
        double dirt = dimension.IsOnSeat && IsDirty(stream) ? character.DirtBy : 0;
        double off = (turnOff ? sign * turn : 0) + (notZeroed ? character.NotZeroedBy : 0) - dirt;
        double bend = character.PilotBend * unit.Factor.ToDouble();
        GaugeReading[] readings = new GaugeReading[places.Count];
        for (int i = 0; i < readings.Length; i++)
        {
            double truth = head[dimension, position, places[i]];
            double looked = dimension.Seen?.Invoke(head, position, places[i], bend) ?? truth;
            bool misled = Math.Abs(looked - truth) > 1e-9;
            double seen = Grown(head, dimension, looked);
            double error =
                character.Bias + (character.Spread * chance.Normal()) + (character.Feel * chance.Normal()) + off;
            double value = ((seen - unit.Offset.ToDouble()) / unit.Factor.ToDouble()) + error;
            readings[i] = new(
                Stepped(value),
                truth,
                turnOff,
                notZeroed,
                dirt != 0 || (misled && dimension.IsOnSeat),
                misled && !dimension.IsOnSeat
            );
        }

        return readings;
    }

    // A stream of its own, so that dirt changes nothing else that chance draws.
    private bool IsDirty(ulong stream) =>
        character.DirtySeats > 0 && new Chance(SplitMix.Inside(stream, "dirt")).Happens(character.DirtySeats);

    // A warm casting shows every length on it too long (ISO 1: lengths are meant at 20 degC).
    private static double Grown(PracticeHead head, HeadDimension dimension, double length) =>
        dimension.Kind == Dimension.OfLength && dimension.IsOfCasting
            ? length * (1 + (head[Truths.HeadExpansion, 0] * (head[Truths.HeadTemperature, 0] - 293.15)))
            : length;

    private Quantity Stepped(double value)
    {
        Quantity step = character.Gauge.Resolution;
        double steps = Math.Round(value / (double)step.Value, MidpointRounding.AwayFromZero);
        return new Quantity((decimal)Math.Clamp(steps, -1e9, 1e9) * step.Value, step.Unit);
    }
}
