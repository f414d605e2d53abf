using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Records.Story;
using ProcRunner.Runs;

namespace ProcRunner.Records;

/// <summary>What is left to work with the next time: in the deck, under each seat, on each valve.</summary>
internal sealed class StockLeft(Plan plan, IReadOnlyList<FinalValue> values)
{
    // Which limit a reading runs towards in service or when it is worked again: common practice, no source.
    private static readonly (string Role, bool TowardsHigh, string Words)[] Readings =
    [
        (RecordRoles.DeckThickness, false, "deck left above the least thickness"),
        (RecordRoles.Recession, true, "the valve may still sink by"),
        (RecordRoles.StemHeight, true, "the stem may still rise by"),
        (RecordRoles.Margin, false, "edge of the valve left above the least margin"),
        (RecordRoles.InstalledHeight, true, "the spring may still stand taller by"),
    ];

    /// <summary>Everything that can be said.</summary>
    public IEnumerable<Reckoning> All() =>
        Readings
            .SelectMany(r =>
                values
                    .Where(v =>
                        v.Name == plan.Procedure.ValueShownAs(r.Role)
                        && v.Standing is not (ValueStanding.Recheck or ValueStanding.AsFound)
                    )
                    .SelectMany(v => Of(v, r.TowardsHigh, r.Words))
            )
            .Concat(FurtherSkim())
            .Concat(Budget());

    // A skim brings the deck nearer to every valve: the least room of all is what a further one may take.
    private IEnumerable<Reckoning> FurtherSkim() =>
        values
            .Where(v =>
                v.Name == plan.Procedure.ValueShownAs(RecordRoles.Recession)
                && v.Standing is not (ValueStanding.Recheck or ValueStanding.AsFound)
            )
            .SelectMany(v =>
                Of(v, towardsHigh: false, "a further skim may take no more, or this valve lies too close to the deck")
            )
            .OrderBy(r => r.Left.Value)
            .Take(1);

    private static IEnumerable<Reckoning> Of(FinalValue value, bool towardsHigh, string words)
    {
        Judgement judged = value.Record.Judgement;
        if ((towardsHigh ? judged.High : judged.Low) is { } end && end.Dimension == value.Record.Value.Dimension)
        {
            Quantity[] terms = towardsHigh ? [end, value.Record.Value] : [value.Record.Value, end];
            yield return Less(value.Name, value.Position, terms, words, judged.Origin);
        }
    }

    private IEnumerable<Reckoning> Budget()
    {
        if (plan.Head.FigureOf("deck budget", null) is not { } budget)
        {
            yield break;
        }

        Quantity?[] lost =
        [
            ValueOf(RecordRoles.BlockLost),
            ValueOf(RecordRoles.LostBefore),
            ValueOf(RecordRoles.SkimTaken),
        ];
        if (lost[0] is not null && lost[1] is not null)
        {
            yield return Less(
                "head and block together",
                "head",
                [budget.Value, .. lost.OfType<Quantity>()],
                "budget of head and block, less what the block, the head before and the head now have lost",
                OriginWords.Of(budget.Origin)
            );
        }
    }

    private Quantity? ValueOf(string role) =>
        plan.Procedure.ValueShownAs(role) is { } name ? values.FirstOrDefault(v => v.Name == name)?.Record.Value : null;

    private static Reckoning Less(string what, string position, Quantity[] terms, string words, string origin)
    {
        Exact left = terms.Skip(1).Aggregate(Exact.Of(terms[0]), (rest, term) => rest - Exact.Of(term));
        return new Reckoning(what, position, Show.In(left, terms[0].Unit), terms, words, origin);
    }
}
