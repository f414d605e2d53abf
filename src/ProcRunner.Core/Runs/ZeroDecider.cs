using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Runs;

/// <summary>A zero point: first the reading at touch-off, then the number that the readout was set to.</summary>
internal static class ZeroDecider
{
    /// <summary>Takes an entry at a zero step.</summary>
    public static Decision Enter(Deciding on, At at, StepWork.Zero zero, string text)
    {
        StepRecord? record = on.State.Find(at);
        return zero.From is { } taking && !IsMeasured(on, at, zero, record)
            ? Measure(on, at, taking, text)
            : Set(on, at, record, text);
    }

    /// <summary>The number that the readout is to be set to, or null while the reading is due or no readout is set up.</summary>
    public static Quantity? NumberToSet(Deciding on, At at)
    {
        if (on.Shop.Readout is null)
        {
            return null;
        }

        StepWork.Zero zero = (StepWork.Zero)on.StepOf(at).Work;
        StepRecord? record = on.State.Find(at);
        return IsMeasured(on, at, zero, record)
            ? Maths(on, at).NumberToSet(Exact.Of(MeasuredAt(on, at, record)))
            : null;
    }

    // The reading is there, for this zero, and nothing has moved since.
    private static bool IsMeasured(Deciding on, At at, StepWork.Zero zero, StepRecord? record) =>
        zero.From is not { } taking
        || (
            record is { AtZero: not null, Cut: null, Stale: false }
            && on.State.Value(taking.Characteristic, at.Position) is not { Stale: true }
        );

    private static Decision Measure(Deciding on, At at, Taking taking, string text)
    {
        switch (ReadingTaker.Read(on, at, taking, text))
        {
            case ReadingResult.Questioned questioned:
                return Deciding.Yes(questioned.Question);
            case ReadingResult.Taken taken:
                return Deciding.Yes(
                    taken.Gauge,
                    on.Stales(at, taken.Reading, on.MovesOf(at), $"{taking.Characteristic} was measured again"),
                    new RunEvent.ReadingTaken(at, taken.Reading)
                );
            case ReadingResult.Refused refused:
                return refused.Why;
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    private static Decision Set(Deciding on, At at, StepRecord? record, string text)
    {
        if (on.Shop.Readout is not { } readout)
        {
            return Deciding.No(
                "The machine's readout hasn't been set up.",
                "Set it up first (in the menu, settings, or procrunner gauges readout)."
            );
        }

        Quantity measured = MeasuredAt(on, at, record);
        Quantity wanted = Maths(on, at).NumberToSet(Exact.Of(measured));
        EntryResult entry = EntryText.Parse(text, new FieldHint(readout.Unit, 1, 1, null, null));
        if (entry is EntryResult.Questioned doubt)
        {
            return Deciding.Yes(new RunEvent.EntryQuestioned(at, text, doubt.Why, doubt.Meanings));
        }

        if (entry is not EntryResult.Taken { Values: [{ } shown] } taken)
        {
            return EntryRefusal.Of(entry, $"what the readout shows ({readout.Unit})");
        }

        if (shown.Dimension != wanted.Dimension || !shown.SameAs(wanted))
        {
            return Deciding.No(
                $"The readout shows {shown}; at this zero it must show {wanted}.",
                $"Set the readout to {wanted}, then type what it shows."
            );
        }

        StaleItem[] others =
        [
            .. on
                .Plan.Steps.Where(s => s.Work is StepWork.Zero)
                .SelectMany(s => on.Plan.PositionsOf(s).Select(p => new At(s.Index, p)))
                .Where(other => other != at && on.State.Find(other) is { Standing: StepStanding.Done, Stale: false })
                .Select(other => new StaleItem(-1, other.Step, other.Position)),
        ];
        RunEvent.WentStale? stale =
            others.Length == 0 ? null : new RunEvent.WentStale(others, "the readout was set for another cut", at.Step);
        return Deciding.Yes(
            stale,
            new RunEvent.ZeroSet(at, new ZeroPoint(wanted, measured), ReadoutWords.Of(readout), taken.Typed)
        );
    }

    private static ReadoutMaths Maths(Deciding on, At at) =>
        new(on.Shop.Readout!, on.Plan.PositionOf(at.Position)?.GuideAngle ?? 0);

    private static Quantity MeasuredAt(Deciding on, At at, StepRecord? record) =>
        record?.AtZero?.Value ?? CutSoFar(on, at) ?? new Quantity(0, on.Plan.Head.LengthUnit);

    // A cut that takes off the very surface that its zero is touched on: set anew in the middle of it, the zero lies as deep as
    // the cut has come, by its last reading and the travel since. From 0 the whole cut would be taken a second time.
    private static Quantity? CutSoFar(Deciding on, At at)
    {
        if (
            on.Plan.CutOfZero(at.Step) is not { } cut
            || on.Plan.StepAt(cut).Moves.All(move => move.Of != on.StepOf(at).Subject)
            || on.State.Find(at with { Step = cut }) is not { Cut: { } progress }
        )
        {
            return null;
        }

        Exact depth = Maths(on, at)
            .DepthAfter(
                Exact.Of(progress.Reading),
                Rational.FromDecimal(progress.Travel.Value - progress.TravelAtReading.Value)
            );
        return Show.In(depth, progress.Reading.Unit);
    }
}
