using ProcRunner.Procedures;
using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>
/// What must match on two heads of one engine: thickness, recession, chamber volume, gasket. Two banks with unlike heads run
/// unlike compression (common practice, no source). The setting "linked head difference" of the procedure says how far lengths
/// may be apart.
/// </summary>
public static class HeadComparison
{
    /// <summary>The procedure's setting that limits a difference of lengths.</summary>
    public const string LimitName = "linked head difference";

    private static readonly string[] Words = ["thickness", "recession", "chamber volume"];
    private const string Other = "other head";
    private const string Gasket = "gasket";

    /// <summary>The figures of both, side by side; positions pair by kind and order, since banks number on.</summary>
    public static IReadOnlyList<HeadFigure> Of(RunState here, RunState there)
    {
        Quantity? limit = here.Plan.Procedure.Settings.TryGetValue(LimitName, out Setting? setting)
            ? setting.Value
            : null;
        List<Side> ours = [.. Sides(here)];
        List<Side> theirs = [.. Sides(there)];
        return
        [
            .. ours.Select(s => s.Name)
                .Union(theirs.Select(s => s.Name), StringComparer.Ordinal)
                .Select(name => Figure(name, ours.Find(s => s.Name == name), theirs.Find(s => s.Name == name), limit)),
        ];
    }

    /// <summary>What a comparison says of this head's side, now.</summary>
    public static IReadOnlyList<(string Of, string Here)> SideOf(RunState state) =>
        [.. Sides(state).Select(s => (s.Name, s.Shown))];

    private static HeadFigure Figure(string name, Side? here, Side? there, Quantity? limit)
    {
        string shownHere = here?.Shown ?? "";
        string shownThere = there?.Shown ?? "";
        if (here is not { Value: { } a } || there is not { Value: { } b } || a.Dimension != b.Dimension)
        {
            bool texts = shownHere.Length > 0 && shownThere.Length > 0;
            bool differs = texts && !string.Equals(shownHere, shownThere, StringComparison.OrdinalIgnoreCase);
            return new(name, shownHere, shownThere, differs ? "not the same" : "", differs);
        }

        Exact apart = Apart(Exact.Of(a), Exact.Of(b));
        int digits = Math.Max((int)a.Value.Scale, (int)b.Value.Scale);
        string difference = apart.TryToQuantity(a.Unit, digits, Rounding.AwayFromZero, out Quantity shown)
            ? shown.ToString()
            : "";
        bool over = limit is { } most && most.Dimension == a.Dimension && apart.CompareTo(Exact.Of(most)) > 0;
        return new(name, shownHere, shownThere, difference, over);
    }

    private static Exact Apart(Exact a, Exact b) => a.CompareTo(b) >= 0 ? a - b : b - a;

    private static IEnumerable<Side> Sides(RunState state)
    {
        Plan plan = state.Plan;
        for (int i = 0; i < plan.Procedure.Characteristics.Count; i++)
        {
            Characteristic characteristic = plan.CharacteristicAt(i);
            string name = characteristic.Name;
            if (!Array.Exists(Words, w => IsOf(name, w)) || Has(name, Other))
            {
                continue;
            }

            Dictionary<string, int> counted = new(StringComparer.Ordinal);
            foreach (int position in characteristic.OfHead ? [At.Head] : Enumerable.Range(0, plan.Positions.Count))
            {
                string kind = plan.PositionOf(position)?.Kind ?? "";
                int number = counted[kind] = counted.GetValueOrDefault(kind) + 1;
                if (state.Value(i, position) is { Stale: false } value)
                {
                    yield return characteristic.OfHead
                        ? new(name, value.Value, value.Value.ToString())
                        : new(
                            string.Create(
                                System.Globalization.CultureInfo.InvariantCulture,
                                $"{name}, {kind} {number}"
                            ),
                            value.Value,
                            $"{value.Value} at {plan.PositionName(position)}"
                        );
                }
            }
        }

        foreach (RunEvent.PartFitted part in state.Parts.Where(p => Has(p.Part, Gasket)))
        {
            yield return new(part.Part, null, part.Number);
        }

        foreach (
            string subject in plan.Steps.Select(s => s.Work).OfType<StepWork.Decide>().Select(d => d.Subject).Distinct()
        )
        {
            if (Has(subject, Gasket) && state.ChoiceOf(subject, At.Head) is { } choice)
            {
                yield return new(subject, null, choice);
            }
        }
    }

    // Deck thickness is a thickness; thickness after clean-up is a plan, and recession off its kind a spread.
    private static bool IsOf(string name, string word) => name.EndsWith(word, StringComparison.OrdinalIgnoreCase);

    private static bool Has(string text, string word) => text.Contains(word, StringComparison.OrdinalIgnoreCase);

    private sealed record Side(string Name, Quantity? Value, string Shown);
}
