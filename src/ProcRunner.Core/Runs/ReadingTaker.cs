using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Runs.Doubts;
using ProcRunner.Shop;

namespace ProcRunner.Runs;

/// <summary>Takes an entry as a reading: gauge, limits, places, verdict, worked-out values.</summary>
internal static class ReadingTaker
{
    /// <summary>Reads an entry for a step at a position.</summary>
    /// <param name="on">The run and the shop.</param>
    /// <param name="at">The step.</param>
    /// <param name="taking">What it takes.</param>
    /// <param name="text">What was typed.</param>
    /// <param name="predicted">At a cut, what the readout gives; null elsewhere.</param>
    public static ReadingResult Read(Deciding on, At at, Taking taking, string text, Exact? predicted = null)
    {
        Characteristic characteristic = on.Plan.CharacteristicAt(on.Plan.CharacteristicIndex(taking.Characteristic));
        Unit unit = characteristic.UnitOn(on.Plan.Head);
        Limits limits;
        switch (LimitFinder.Find(on.State, taking.Window, taking.Shift, at.Position))
        {
            case LimitResult.Found found:
                limits = found.Limits;
                break;
            case LimitResult.Unknown unknown:
                return Refused(
                    $"No limit is known for {unknown.Name}: {unknown.Why}.",
                    $"Choose one and say why: limit {unknown.Name} low … aim … high … because …"
                );
            case LimitResult.NotYet notYet:
                return Refused($"The limits of {characteristic.Name} can't be worked out: {notYet.Why}.");
            default:
                throw new System.Diagnostics.UnreachableException();
        }

        (Gauge? gauge, RunEvent.GaugeChosen? chosen, Decision.Refused? unfit) = GaugeChooser.For(on, taking, limits);
        if (unfit is not null)
        {
            return new ReadingResult.Refused(unfit);
        }

        FieldHint field = Field(on.State, taking, at, limits);
        return EntryText.Parse(text, field) switch
        {
            EntryResult.Questioned q => new ReadingResult.Questioned(
                new RunEvent.EntryQuestioned(at, text, q.Why, q.Meanings)
            ),
            EntryResult.Unreadable bad => Refused($"Read {bad.WhatWasRead}; expected {bad.Expected}.", bad.WhatToDo),
            EntryResult.Taken taken => Doubted(
                Judge(on, at, taking, characteristic, limits, taken, gauge, chosen),
                reading => new Seen
                {
                    On = on,
                    At = at,
                    Of = characteristic,
                    Limits = limits,
                    Reading = reading,
                    Gauge = gauge,
                    Predicted = predicted,
                },
                before => EntryText.Parse(before, field)
            ),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    private static ReadingResult Doubted(
        ReadingResult result,
        Func<TakenReading, Seen> seen,
        Func<string, EntryResult> parse
    ) =>
        result is ReadingResult.Taken taken && ReadingDoubts.Of(seen(taken.Reading), parse) is { } question
            ? new ReadingResult.Questioned(question)
            : result;

    private static ReadingResult Judge(
        Deciding on,
        At at,
        Taking taking,
        Characteristic characteristic,
        Limits limits,
        EntryResult.Taken taken,
        Gauge? gauge,
        RunEvent.GaugeChosen? chosen
    )
    {
        Unit unit = characteristic.UnitOn(on.Plan.Head);
        PlaceValue[] places = new PlaceValue[taken.Values.Count];
        Exact[] exact = new Exact[places.Length];
        for (int i = 0; i < places.Length; i++)
        {
            places[i] = new PlaceValue(taking.Places.Count > i ? taking.Places[i] : "", taken.Values[i]);
            exact[i] = Exact.Of(taken.Values[i]);
        }

        Exact? spread = null;
        if (taking.Spread is { } formula)
        {
            (spread, string why) = LimitFinder.Work(on.State, formula, at.Position);
            if (spread is null)
            {
                return Refused($"The limit of the spread can't be worked out: {why}.");
            }
        }

        Judgement judgement = Judging.Of(characteristic.Name, exact, unit, limits, spread);
        Quantity value =
            taken.Values.Count == 1
                ? taken.Values[0]
                : Show.In(Statistics.Of(characteristic.Takes, exact), taken.Values[0].Unit);
        TakenReading reading = new()
        {
            Characteristic = characteristic.Name,
            Typed = taken.Typed,
            Places = places,
            Value = value,
            Gauge = gauge?.Id ?? "",
            Judgement = judgement,
            Worked = [],
        };
        (IReadOnlyList<WorkedValue> worked, string notYet) = ValueWorker.Work(on, at, taking, reading);
        return notYet.Length > 0
            ? Refused(notYet)
            : new ReadingResult.Taken(worked.Count > 0 ? reading with { Worked = worked } : reading, chosen);
    }

    // How far over its limit a value that is only recorded, or has no limit at that end, may be before it looks like a slip of
    // the point: parts come worn, and more is often better, so three times further than one that is judged. Common practice,
    // no source.
    private static readonly Rational Worn = Rational.FromInteger(3);

    /// <summary>
    /// What an entry is read as. A window open at one end is closed with the head spec's own limit of that name, and where that
    /// has none above, with three times the low one: so that a lost point shows there too.
    /// </summary>
    /// <remarks>Limits worked out from readings can cross: then nothing passes, and there is nothing to expect either.</remarks>
    internal static FieldHint Field(RunState state, Taking taking, At at, Limits limits)
    {
        Characteristic characteristic = state.Plan.CharacteristicAt(
            state.Plan.CharacteristicIndex(taking.Characteristic)
        );
        int places = Math.Max(1, taking.Places.Count);
        Unit unit = characteristic.UnitOn(state.Plan.Head);
        (Quantity? specLow, _, Quantity? specHigh) = LimitFinder.Figures(state, characteristic.Name, at.Position);
        Quantity? low = Hint(limits.Low, unit) ?? Hint(limits.High is null ? null : ExactOf(specLow), unit);
        Quantity? high =
            Hint(limits.High, unit)
            ?? Hint(limits.Low is null ? Farthest(specHigh) : ExactOf(specHigh), unit)
            ?? Hint(Farthest(low), unit);
        bool crossed = low is { } from && high is { } to && from.CompareTo(to) > 0;
        return crossed ? new FieldHint(unit, places, places) : new FieldHint(unit, places, places, low, high);
    }

    private static Exact? Farthest(Quantity? limit) =>
        limit is { Value: > 0 } end ? new Exact(Exact.Of(end).Value * Worn, end.Dimension) : null;

    private static Exact? ExactOf(Quantity? quantity) => quantity is { } value ? Exact.Of(value) : null;

    private static Quantity? Hint(Exact? end, Unit unit) =>
        end is { } value && value.Dimension == unit.Dimension ? Show.In(value, unit) : null;

    private static ReadingResult.Refused Refused(string why, params string[] whatToDo) =>
        new(Deciding.No(why, whatToDo));
}
