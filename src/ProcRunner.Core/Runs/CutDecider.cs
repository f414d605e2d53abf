using ProcRunner.Procedures;
using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>A cut: passes by the readout toward a target, then a reading, until the aim is reached.</summary>
internal static class CutDecider
{
    /// <summary>Takes an entry at a cut: what the readout shows after a pass, or the reading with the valve in.</summary>
    public static Decision Enter(Deciding on, At at, StepWork.Cut cut, string text)
    {
        StepRecord? record = on.State.Find(at);
        if (record is { Standing: StepStanding.Done })
        {
            return Judge(on, at, cut, record.Cut, text, again: true);
        }

        if (record?.Cut is not { } progress)
        {
            return Deciding.No("This cut has no zero yet.", $"Set it first: {on.Plan.StepAt(cut.ZeroStep).FullName}.");
        }

        if (progress.Measures || Targets.IsBaseStale(on.State, at))
        {
            return Judge(on, at, cut, progress, text, again: false);
        }

        (CutOutlook? outlook, string why) = Targets.For(on.State, on.Shop, at, progress);
        return outlook is null ? Deciding.No($"The target can't be worked out: {why}.")
            : outlook.Target is null ? Judge(on, at, cut, progress, text, again: false)
            : Pass(on, at, progress, outlook, text);
    }

    /// <summary>Ends a cut short of its aim, when its last reading is within the window.</summary>
    public static Decision End(Deciding on, At at)
    {
        StepRecord? record = on.State.Find(at);
        bool measured =
            record is { Standing: StepStanding.InHand, Cut: { Measures: false } progress, Readings.Count: > 0 }
            && progress.Travel == progress.TravelAtReading;
        if (!measured)
        {
            return Deciding.No("There is no reading since the last pass.", "Lift, wipe and measure first.");
        }

        // A zero set since lets the cut go on; to end it the value itself must hold.
        StepWork.Cut cut = (StepWork.Cut)on.StepOf(at).Work;
        if (on.State.Value(cut.Taking.Characteristic, at.Position) is { Stale: true })
        {
            return Deciding.No("The last reading is to be taken again.", "Lift, wipe and measure first.");
        }

        TakenReading last = record!.Readings[^1];
        if (
            last.Judgement.Verdict != Verdict.Short
            || LimitFinder.Find(on.State, cut.Taking.Window, cut.Taking.Shift, at.Position)
                is not LimitResult.Found { Limits: var limits }
            || !last.Places.All(p => IsWithin(Exact.Of(p.Value), limits))
        )
        {
            return Deciding.No(
                $"The last reading, {last.Value}, is not within the window.",
                "Cut on to the target, or measure again."
            );
        }

        return last.Worked.FirstOrDefault(w => w.Judgement.Verdict == Verdict.Short) is { } worked
            ? Deciding.No(
                $"{worked.Name} {worked.Value} is not within its limits ({worked.Working}).",
                "Cut on to the target, or measure again."
            )
            : Deciding.Yes(new RunEvent.CutEnded(at));
    }

    private static bool IsWithin(Exact value, Limits limits) =>
        !(limits.Low is { } low && value.CompareTo(low) < 0) && !(limits.High is { } high && value.CompareTo(high) > 0);

    /// <summary>Corrects the last reading of a cut; what is left is worked out again from before it.</summary>
    public static Decision CorrectReading(Deciding on, At at, StepWork.Cut cut, string text)
    {
        StepRecord? record = on.State.Find(at);
        return Judge(on, at, cut, record?.BeforeReading ?? record?.Cut, text, again: false);
    }

    /// <summary>Corrects the last pass: the readout was misread or mistyped.</summary>
    public static Decision CorrectPass(Deciding on, At at, string text)
    {
        StepRecord? record = on.State.Find(at);
        if (record?.BeforeLastPass is not { } before || record.Cut!.Travel == record.Cut.TravelAtReading)
        {
            return Deciding.No("There is no pass here to correct.", "Report what changed, or measure again.");
        }

        (CutOutlook? outlook, string why) = Targets.For(on.State, on.Shop, at, before, record.ApproachedBeforeLastPass);
        Decision decision = outlook is null
            ? Deciding.No($"The target can't be worked out: {why}.")
            : Pass(on, at, before, outlook, text);
        return decision is Decision.Accepted { Events: [RunEvent.EntryQuestioned asked] }
            ? Deciding.No(asked.Why, [.. asked.Meanings.Select(m => $"Type {m} if that is meant.")])
            : decision;
    }

    private static Decision Pass(Deciding on, At at, CutProgress progress, CutOutlook outlook, string text)
    {
        Unit unit = outlook.Maths.Readout.Unit;
        Quantity? near = outlook.Target?.Show;
        EntryResult entry = EntryText.Parse(text, new FieldHint(unit, 1, 1, null, null));
        if (entry is EntryResult.Questioned doubt)
        {
            return Deciding.Yes(new RunEvent.EntryQuestioned(at, text, doubt.Why, doubt.Meanings));
        }

        if (entry is not EntryResult.Taken { Values: [{ } shown] } taken || shown.Dimension != unit.Dimension)
        {
            return EntryRefusal.Of(entry, $"what the readout shows ({unit})");
        }

        Rational behind = outlook.Maths.Readout.StepMode ? Rational.FromDecimal(progress.Travel.Value) : Rational.Zero;
        Rational travel = behind + outlook.Maths.TravelAt(Targets.Base(progress, outlook.Maths), shown);
        Quantity travelled = Targets.Travelled(travel, outlook.Maths);
        if (travelled.Value < progress.Travel.Value)
        {
            return Deciding.No(
                $"The readout shows {shown}: that is shallower than the last pass, {progress.Readout}.",
                "Read it again. If the zero has moved, report what changed."
            );
        }

        bool unitTyped = taken.Typed.Any(char.IsLetter);
        if (!unitTyped && travelled.Value - progress.Travel.Value > MostTravel(outlook))
        {
            return Deciding.Yes(
                new RunEvent.EntryQuestioned(
                    at,
                    taken.Typed,
                    $"The target is {near}; {shown} is a long way past it.",
                    [shown.ToString()]
                )
            );
        }

        CutTarget target = outlook.Target ?? new CutTarget(shown, false, new Quantity(0, unit), "");
        bool reached = target.Left.Value <= travelled.Value - progress.Travel.Value;
        CutProgress after = progress with { Readout = shown, Travel = travelled, Measures = reached };
        return Deciding.Yes(
            on.Stales(at, on.MovesOf(at), $"{on.StepOf(at).Name} was cut"),
            new RunEvent.PassCut(at, taken.Typed, after, target)
        );
    }

    // Three times what is left and a hundredth of an inch more: a lost or shifted point is past it, a cutter that ran on
    // isn't. Common practice, no source.
    private static decimal MostTravel(CutOutlook outlook) =>
        ((outlook.Target?.Left.Value ?? 0m) * 3m)
        + Show.In(Exact.Of(new Quantity(0.01m, Units.Inch)), outlook.Maths.Readout.Unit).Value;

    private static Decision Judge(Deciding on, At at, StepWork.Cut cut, CutProgress? progress, string text, bool again)
    {
        (Exact? predicted, Exact? within) = Prediction(on, at, cut, progress);
        Exact? expected = predicted ?? Unmoved(progress);
        switch (ReadingTaker.Read(on, at, cut.Taking, text, expected))
        {
            case ReadingResult.Questioned questioned:
                return Deciding.Yes(questioned.Question);
            case ReadingResult.Refused refused:
                return refused.Why;
            case ReadingResult.Taken taken:
                TakenReading reading = Predicted(taken.Reading, predicted, within);
                reading = Shortened(on, at, cut, reading);
                bool rezero = reading.Disagrees || (again && reading.Judgement.Verdict == Verdict.Short);
                RunEvent.WentStale? zeroLost =
                    rezero && reading.Judgement.Verdict == Verdict.Short
                        ? new RunEvent.WentStale(
                            [new StaleItem(-1, cut.ZeroStep, at.Position)],
                            reading.Disagrees ? "readout and gauge disagree" : "more is to be cut",
                            at.Step
                        )
                        : null;
                return Deciding.Yes(
                    taken.Gauge,
                    on.Stales(at, reading, [], $"{cut.Taking.Characteristic} was measured again"),
                    zeroLost,
                    new RunEvent.ReadingTaken(at, reading)
                );
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    // With nothing cut since, the last reading is to be expected again.
    private static Exact? Unmoved(CutProgress? progress) =>
        progress is not null && progress.Travel == progress.TravelAtReading ? Exact.Of(progress.Reading) : null;

    // What the readout gives after a cut, and how far a reading may be off it; nothing when nothing was cut since the last.
    private static (Exact? Predicted, Exact? Within) Prediction(
        Deciding on,
        At at,
        StepWork.Cut cut,
        CutProgress? progress
    )
    {
        bool comparable = progress is not null && progress.Travel != progress.TravelAtReading;
        if (progress is null || !comparable || Targets.IsBaseStale(on.State, at))
        {
            return (null, null);
        }

        (CutOutlook? outlook, _) = Targets.For(on.State, on.Shop, at, progress);
        if (outlook is null)
        {
            return (null, null);
        }

        Exact predicted = outlook.Maths.DepthAfter(
            Exact.Of(progress.Reading),
            Rational.FromDecimal(progress.Travel.Value - progress.TravelAtReading.Value)
        );
        Exact? within = cut.AgreeWithin is { } formula
            ? LimitFinder.Work(on.State, formula, at.Position).Amount
            : Targets.Uncertainty(on.State, on.Shop, cut, outlook.Maths);
        return (predicted, within);
    }

    private static TakenReading Predicted(TakenReading reading, Exact? predicted, Exact? within) =>
        predicted is { } expected
            ? reading with
            {
                Predicted = Show.In(expected, reading.Value.Unit),
                Disagrees = within is { } most && (Exact.Of(reading.Value).Value - expected.Value).Abs() > most.Value,
            }
            : reading;

    // Under the low limit with metal still to go isn't out of spec; nor is a cut done while more than a step is left.
    private static TakenReading Shortened(Deciding on, At at, StepWork.Cut cut, TakenReading reading)
    {
        LimitResult found = LimitFinder.Find(on.State, cut.Taking.Window, cut.Taking.Shift, at.Position);
        if (found is not LimitResult.Found { Limits: { Aim: { } aim } limits } || on.Shop.Readout is not { } readout)
        {
            return reading;
        }

        Exact[] values = [.. reading.Places.Select(p => Exact.Of(p.Value))];
        Rational left = new ShopMath.ReadoutMaths(readout, 0).TravelFor(Exact.Of(reading.Value), aim);
        bool more = left >= Rational.FromDecimal(readout.Step);
        bool tooDeep = limits.High is { } high && values.Max().CompareTo(high) > 0;
        bool underLow = limits.Low is { } low && values.Min().CompareTo(low) < 0;
        bool onlyShallow = reading.Judgement.Verdict != Verdict.Out || (underLow && !tooDeep);
        return more && onlyShallow
            ? reading with
            {
                Judgement = reading.Judgement with { Verdict = Verdict.Short, Detail = "" },
                Worked = [.. reading.Worked.Select(AsShort)],
            }
            : reading;
    }

    // What follows from an unfinished depth isn't out yet, but the cut can't end on it.
    private static WorkedValue AsShort(WorkedValue worked) =>
        worked.Judgement.Verdict == Verdict.Out
            ? worked with
            {
                Judgement = worked.Judgement with { Verdict = Verdict.Short, Detail = "" },
            }
            : worked;
}
