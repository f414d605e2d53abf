using ProcRunner.Lessons;
using ProcRunner.Practice.Heads;
using ProcRunner.Practice.Works;
using ProcRunner.Problems;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Runs;

namespace ProcRunner.Practice.Bindings;

/// <summary>Binds a setup and collects what doesn't fit.</summary>
internal sealed class Binder(Plan plan, PracticeSetup setup)
{
    private const string NotDefined = "PR-P01";
    private readonly List<Problem> _problems = [];
    private readonly Dictionary<int, BoundDimension> _readings = [];
    private readonly Dictionary<int, (Work, IReadOnlyList<AimTerm>)> _works = [];
    private readonly Dictionary<string, (Work, IReadOnlyList<AimTerm>)> _ways = new(StringComparer.Ordinal);
    private readonly Dictionary<int, BoundFinding> _findings = [];

    public IReadOnlyList<Problem> Problems => _problems;

    private Place File => new(setup.Readings.Count > 0 ? setup.Readings[0].Source.File : setup.Name, 0, 0);

    public Binding Bind()
    {
        if (setup.Procedure != plan.Procedure.Name || setup.Head != plan.Head.Name)
        {
            Add(
                File,
                $"this setup is for {setup.Procedure} on {setup.Head}, not for {plan.Procedure.Name} on {plan.Head.Name}"
            );
        }

        foreach (BoundReading reading in setup.Readings)
        {
            BindReading(reading);
        }

        foreach (BoundWork work in setup.Works)
        {
            BindWork(work);
        }

        foreach (BoundWork way in setup.Ways)
        {
            BindWay(way);
        }

        foreach (BoundFinding finding in setup.Findings)
        {
            BindFinding(finding);
        }

        CheckSteps();
        CheckDecisions();
        CheckTruths(setup.Heads);
        foreach (TruthTable part in setup.Parts.Values)
        {
            CheckTruths(part);
        }

        CheckConcessions();
        CheckGauges();
        foreach ((string name, Quantity tool) in setup.Tools)
        {
            if (!Tooling.Known.TryGetValue(name, out Dimension kind))
            {
                Add(File, $"there is no tool error '{name}'; there are {string.Join(", ", Tooling.Known.Keys)}");
            }
            else if (kind != tool.Dimension)
            {
                Add(File, $"the tool error '{name}' is {tool}, where {kind} is wanted");
            }
        }

        return new Binding(plan, setup, _readings, _works, _ways, _findings);
    }

    private void BindReading(BoundReading reading)
    {
        if (!plan.TryCharacteristic(reading.Reading, out int index))
        {
            Add(reading.Source, $"the procedure has no reading '{reading.Reading}'");
            return;
        }

        if (Truths.Find(reading.Of) is not { } dimension)
        {
            Add(
                reading.Source,
                $"a practice head has no '{reading.Of}'{Near(reading.Of, Truths.All.Select(d => d.Name))}"
            );
            return;
        }

        Characteristic characteristic = plan.Procedure.Characteristics[index];
        if (dimension.Kind != characteristic.Dimension || dimension.OfHead != characteristic.OfHead)
        {
            Add(
                reading.Source,
                $"'{reading.Reading}' is {characteristic.Dimension} of {OfWhat(characteristic.OfHead)}, '{reading.Of}' is {dimension.Kind} of {OfWhat(dimension.OfHead)}"
            );
            return;
        }

        _readings[index] = new BoundDimension(dimension, reading.Places);
    }

    private void BindWork(BoundWork bound)
    {
        if (!plan.TryStep(bound.Step, out int step))
        {
            Add(bound.Source, $"the procedure has no step '{bound.Step}'");
        }
        else if (Find(bound) is { } work)
        {
            _works[step] = (work, bound.To);
        }
    }

    private void BindWay(BoundWork bound)
    {
        bool known =
            plan.Steps.Any(s => s.WaysOn.Any(w => w.Text == bound.Step || $"{s.FullName} / {w.Text}" == bound.Step))
            || plan.Procedure.Changes.Any(c => Binding.Changed + c.Name == bound.Step);
        if (!known)
        {
            Add(bound.Source, $"no step has the way on '{bound.Step}'");
        }
        else if (Find(bound) is { } work)
        {
            _ways[bound.Step] = (work, bound.To);
        }
    }

    private Work? Find(BoundWork bound)
    {
        if (WorkTable.Find(bound.Work) is not { } work)
        {
            Add(bound.Source, $"there is no work '{bound.Work}'; there is {string.Join(", ", WorkTable.Names)}");
            return null;
        }

        if (work.NeedsAim && bound.To.Count == 0)
        {
            Add(bound.Source, $"'{bound.Work}' works to a number; say which: to: [...]");
        }

        return work;
    }

    private void BindFinding(BoundFinding bound)
    {
        if (!plan.TryStep(bound.Step, out int step) || plan.Steps[step].Work is not StepWork.Inspect inspect)
        {
            Add(bound.Source, $"the procedure has no inspection '{bound.Step}'");
            return;
        }

        foreach (string word in bound.Words.Values.Where(w => inspect.Findings.All(f => f.Text != w)))
        {
            Add(bound.Source, $"'{word}' is no finding of '{bound.Step}'");
        }

        _findings[step] = bound;
    }

    private void CheckSteps()
    {
        foreach (Step step in plan.Steps)
        {
            Work? work = _works.TryGetValue(step.Index, out (Work Work, IReadOnlyList<AimTerm>) bound)
                ? bound.Work
                : null;
            if (step.Work is StepWork.Zero && work?.Touches is null)
            {
                Add(File, $"the zero '{step.FullName}' is bound to no work that touches a surface");
            }
            else if (step.Work is StepWork.Cut && work?.Cuts is null)
            {
                Add(File, $"the cut '{step.FullName}' is bound to no work that cuts in passes");
            }

            if (step.Taking is { } taking && !ReferenceEquals(work, WorkTable.Choose))
            {
                CheckTaking(step, taking);
            }
        }
    }

    private void CheckTaking(Step step, Taking taking)
    {
        if (!_readings.TryGetValue(plan.CharacteristicIndex(taking.Characteristic), out BoundDimension? reading))
        {
            if (setup.Readings.All(r => r.Reading != taking.Characteristic))
            {
                Add(
                    File,
                    $"the reading '{taking.Characteristic}' of '{step.FullName}' is bound to nothing of the practice head"
                );
            }

            return;
        }

        IReadOnlyList<int> places = reading.PlacesOf(taking.Places);
        for (int i = 0; i < places.Count; i++)
        {
            if (places[i] < 0)
            {
                Add(
                    File,
                    $"'{reading.Dimension.Name}' has no place '{taking.Places[i]}'; there is {string.Join(", ", reading.Dimension.Places)}"
                );
            }
        }

        if (taking.GaugeKind is { } kind && setup.Gauges.Count(g => g.Gauge.Kind == kind) != 1)
        {
            Add(File, $"one gauge of the kind '{kind}' is wanted, for '{step.FullName}'");
        }
    }

    private void CheckDecisions()
    {
        foreach (Step step in plan.Steps.Where(s => s.Work is StepWork.Decide))
        {
            StepWork.Decide decide = (StepWork.Decide)step.Work;
            if (!setup.Decisions.TryGetValue(decide.Subject, out IReadOnlyList<ChoiceRule>? rules) || rules.Count == 0)
            {
                Add(File, $"the decision '{decide.Subject}' has no rules");
                continue;
            }

            foreach (ChoiceRule rule in rules.Where(r => !decide.Choices.Contains(r.Choose, StringComparer.Ordinal)))
            {
                Add(rule.Source, $"'{rule.Choose}' is no choice of '{decide.Subject}'");
            }

            foreach (ChoiceRule rule in rules)
            {
                if (rule.Reading is { } reading && !plan.TryCharacteristic(reading, out _))
                {
                    Add(rule.Source, $"the procedure has no reading '{reading}'");
                }

                if (rule.Found is { } found && plan.InspectorsOf(found).IsEmpty)
                {
                    Add(rule.Source, $"the procedure has no inspection of '{found}'");
                }
            }
        }
    }

    private void CheckGauges()
    {
        foreach (GaugeCharacter character in setup.Gauges)
        {
            Shop.Gauge gauge = character.Gauge;
            Taking[] takings =
            [
                .. plan
                    .Steps.Select(s => s.Taking)
                    .OfType<Taking>()
                    .Where(t => (t.GaugeKind ?? t.Characteristic) == gauge.Kind),
            ];
            if (takings.Length == 0)
            {
                IEnumerable<string> kinds = plan.Steps.Select(s => s.Taking?.GaugeKind).OfType<string>().Distinct();
                Add(
                    character.Source,
                    $"gauge {gauge.Id}: no step reads with a gauge of the kind '{gauge.Kind}'; there is {string.Join(", ", kinds)}"
                );
            }

            foreach (Taking taking in takings)
            {
                Dimension wanted = plan.Procedure
                    .Characteristics[plan.CharacteristicIndex(taking.Characteristic)]
                    .Dimension;
                if (gauge.Resolution.Dimension != wanted || gauge.Uncertainty.Dimension != wanted)
                {
                    Add(
                        character.Source,
                        $"gauge {gauge.Id} reads to {gauge.Resolution} within {gauge.Uncertainty}; '{taking.Characteristic}' is {wanted}"
                    );
                    break;
                }
            }
        }
    }

    private void CheckConcessions()
    {
        foreach ((string name, Quantity most) in setup.Concedes)
        {
            if (!plan.TryCharacteristic(name, out int index))
            {
                Add(File, $"the procedure has no reading '{name}' to concede");
            }
            else if (most.Dimension != plan.Procedure.Characteristics[index].Dimension.OfDifference() || most.Value < 0)
            {
                Add(
                    File,
                    $"'{name}' is conceded by {most}, where {plan.Procedure.Characteristics[index].Dimension} of 0 or more is wanted"
                );
            }
        }
    }

    private void CheckTruths(TruthTable table)
    {
        foreach ((TruthKey key, TrueValue value) in table.Values)
        {
            if (Truths.Find(key.Name) is not { IsGiven: true } dimension)
            {
                Add(
                    value.Source,
                    $"'{key.Name}' isn't given to a practice head{Near(key.Name, Truths.All.Where(d => d.IsGiven).Select(d => d.Name))}"
                );
            }
            else if (value.Is.Any(q => q.Dimension != dimension.Kind))
            {
                Add(value.Source, $"'{key.Name}' is {dimension.Kind}");
            }
            else if (value.Is.Count > 1 && value.Is.Count != dimension.Places.Count)
            {
                Add(
                    value.Source,
                    $"'{key.Name}' has {dimension.Places.Count.ToString(System.Globalization.CultureInfo.InvariantCulture)} places: {string.Join(", ", dimension.Places)}"
                );
            }

            CheckWhere(key, value.Source);
        }

        foreach ((TruthKey key, TrueCondition condition) in table.Conditions)
        {
            CheckWhere(key, condition.Source);
        }
    }

    private void CheckWhere(TruthKey key, Place source)
    {
        if (key.Where is { } where && plan.Positions.All(p => p.Kind != where && p.Name != where))
        {
            Add(source, $"'{where}' is neither a position of the head nor a kind of them");
        }
    }

    private static string OfWhat(bool ofHead) => ofHead ? "the head" : "a position";

    private static string Near(string name, IEnumerable<string> known)
    {
        string[] near = [.. known.Where(k => k.Split(' ').Intersect(name.Split(' ')).Any()).Take(5)];
        return near.Length > 0 ? $"; there is {string.Join(", ", near)}" : "";
    }

    private void Add(Place place, string text) => _problems.Add(new Problem(NotDefined, place, text));
}
