using ProcRunner.Formulas;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Yaml.Trees;
using ProcRunner.Yaml.Values;

namespace ProcRunner.Yaml.Plans;

/// <summary>
/// Finds what each worked-out value is from its formula. One may read others, whose kind must be known first: so those
/// that can be read are, again and again, and what is left at the end goes round in a circle.
/// </summary>
internal sealed class WorkedOutReader(
    FormulaReader formulas,
    ProcedureNames names,
    HashSet<string> broken,
    ValueReader values,
    ProblemLog log
)
{
    public static IReadOnlyList<string> EntryKeys { get; } = ["is", "selects", "in", "window", "why"];

    private readonly Dictionary<Node, Formula> _formulas = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<string, Characteristic> _found = new(StringComparer.Ordinal);

    private readonly SelectionReader _selections = new(values, log);
    private readonly Dictionary<Node, SelectionTable> _tables = new(ReferenceEqualityComparer.Instance);

    /// <summary>The worked-out characteristics, in the order they could be read.</summary>
    public IEnumerable<Characteristic> Found => _found.Values;

    /// <summary>The formula of a works-out entry; null when it couldn't be read.</summary>
    public Formula? FormulaOf(Node entry) => _formulas.GetValueOrDefault(entry);

    /// <summary>The table of a works-out entry; null when it has none or it couldn't be read.</summary>
    public SelectionTable? TableOf(Node entry) => _tables.GetValueOrDefault(entry);

    public void Read(IEnumerable<StepDraft> drafts)
    {
        List<Entry> left = [];
        foreach (
            (StepDraft step, Node.MapEntry one) in drafts.SelectMany(step => step.WorksOut.Select(one => (step, one)))
        )
        {
            if (Entry.Of(step, one, values, log) is { } entry)
            {
                left.Add(entry);
            }
            else
            {
                broken.Add(one.Key.Text);
            }
        }

        left = ReadInTurn(left);
        foreach (Entry entry in left)
        {
            broken.Add(entry.Name);
            string circle = Quoting.Shorten(
                string.Join(", ", left.Select(one => one.Name).Distinct(StringComparer.Ordinal).Take(20)),
                160
            );
            log.Add(
                "PR-P04",
                entry.Is.Place,
                $"{Quoting.Of(entry.Name)} is worked out from a value that is worked out from it ({circle}); break the circle"
            );
        }
    }

    /// <summary>Reads each as soon as what it waits for is known; gives back those that wait for ever.</summary>
    private List<Entry> ReadInTurn(List<Entry> all)
    {
        // Several entries may give one name; it is known when the first of them is.
        HashSet<string> pending = new(all.SelectMany(entry => entry.Settles), StringComparer.Ordinal);
        Dictionary<string, List<Entry>> waiting = new(StringComparer.Ordinal);
        Queue<Entry> ready = new(all);
        while (ready.TryDequeue(out Entry? entry))
        {
            string? waitsFor = entry.WaitsFor.FirstOrDefault(pending.Contains);
            if (waitsFor is null && !TryRead(entry, pending))
            {
                waitsFor = entry.WaitsFor[0];
            }

            if (waitsFor is not null)
            {
                if (!waiting.TryGetValue(waitsFor, out List<Entry>? others))
                {
                    waiting[waitsFor] = others = [];
                }

                others.Add(entry);
                continue;
            }

            foreach (string name in entry.Settles)
            {
                pending.Remove(name);
                if (waiting.Remove(name, out List<Entry>? freed))
                {
                    freed.ForEach(ready.Enqueue);
                }
            }
        }

        return [.. waiting.Values.SelectMany(entries => entries)];
    }

    private bool TryRead(Entry entry, HashSet<string> pending)
    {
        if (
            !formulas.TryRead(
                entry.Is,
                entry.Step.OfHead,
                pending,
                out Formula? formula,
                out IReadOnlyList<string> waitsFor
            )
        )
        {
            entry.WaitsFor = waitsFor;
            return false;
        }

        if (formula is null || DimensionOf(formula, entry) is not { } of || Selected(entry, of) is not { } dimension)
        {
            broken.Add(entry.Name);
            return true;
        }

        _formulas[entry.Node] = formula;
        if (_found.TryGetValue(entry.Name, out Characteristic? before))
        {
            if (before.Dimension != dimension)
            {
                log.Add(
                    "PR-P02",
                    entry.Is.Place,
                    $"{Quoting.Of(entry.Name)} is a {dimension} here and a {before.Dimension} elsewhere; rename one of them"
                );
            }

            return true;
        }

        Characteristic found = new()
        {
            Name = entry.Name,
            OfHead = entry.Step.OfHead,
            Dimension = dimension,
            MeasuredIn = UnitOf(entry, dimension),
            WorkedOut = true,
            Why = values.Text(entry.Keys.Find("why")) ?? "",
        };
        _found[entry.Name] = found;
        names.AddCharacteristic(found);
        if (entry.LimitName is { } limit)
        {
            names.AddLimit(limit, dimension);
        }

        return true;
    }

    // What counts in the end: what the formula gives, or what its table gives for that.
    private Dimension? Selected(Entry entry, Dimension of)
    {
        if (entry.Keys.Find("selects") is not { } rows)
        {
            return of;
        }

        if (_selections.Read(rows, of) is not { } table)
        {
            return null;
        }

        _tables[entry.Node] = table;
        return table.Rows[0].Gives.Dimension;
    }

    private Dimension? DimensionOf(Formula formula, Entry entry)
    {
        Dimension dimension = ((FormulaType.OfQuantity)formula.Type).Dimension;
        if (Units.All.Any(unit => unit.Dimension == dimension))
        {
            return dimension;
        }

        log.Add("PR-F02", entry.Is.Place, $"this gives {dimension}, which no unit measures; check the formula");
        return null;
    }

    private Unit? UnitOf(Entry entry, Dimension dimension)
    {
        if (values.UnitOf(entry.Keys.Find("in")) is { } unit)
        {
            if (unit.Dimension == dimension)
            {
                return unit;
            }

            log.Add(
                "PR-F02",
                entry.Keys.PlaceOf("in"),
                $"{unit.Symbol} measures {unit.Dimension}, but the formula gives {dimension}"
            );
        }

        return null;
    }

    private sealed record Entry(StepDraft Step, string Name, Node Node, Keys Keys, Node Is)
    {
        /// <summary>The limit that it is judged against and so tells the kind of; null for none or one worked out.</summary>
        public string? LimitName => Keys.Find("window") is Node.Scalar { Text: not "none" } scalar ? scalar.Text : null;

        /// <summary>Names that its formula reads and that weren't known when it was last tried.</summary>
        public IReadOnlyList<string> WaitsFor { get; set; } = [];

        /// <summary>Names whose kind is known once this is read.</summary>
        public IEnumerable<string> Settles => LimitName is { } limit ? [Name, limit] : [Name];

        public static Entry? Of(StepDraft step, Node.MapEntry entry, ValueReader values, ProblemLog log)
        {
            if (
                Keys.Of(entry.Value, "a worked-out value", EntryKeys, log) is { } keys
                && keys.Require("is") is { } formula
                && values.Name(entry.Key) is { } name
            )
            {
                return new Entry(step, name, entry.Value, keys, formula);
            }

            return null;
        }
    }
}
