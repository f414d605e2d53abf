using ProcRunner.Formulas;
using ProcRunner.Quantities;

namespace ProcRunner.Procedures;

/// <summary>
/// Everything in a procedure that a formula can name, with its type. A formula of the head sees what there is once; one at
/// a position sees that and what there is at the position.
/// </summary>
public sealed class ProcedureNames
{
    private readonly Dictionary<string, Characteristic> _characteristics = new(StringComparer.Ordinal);
    private readonly Dictionary<string, HashSet<string>> _places = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Dimension> _limits = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Dimension> _figures = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Dimension> _settings = new(StringComparer.Ordinal);
    private readonly Dictionary<string, NamedChoices> _decisions = new(StringComparer.Ordinal);
    private readonly Dictionary<string, NamedChoices> _findings = new(StringComparer.Ordinal);
    private readonly HashSet<string> _features = new(StringComparer.Ordinal);

    /// <summary>The names of a procedure that was read.</summary>
    public static ProcedureNames Of(Procedure procedure)
    {
        var names = new ProcedureNames();
        foreach (Characteristic characteristic in procedure.Characteristics)
        {
            names.AddCharacteristic(characteristic);
        }

        foreach ((string name, Setting setting) in procedure.Settings)
        {
            names.AddSetting(name, setting.Value.Dimension);
        }

        foreach ((string name, Dimension dimension) in procedure.Figures)
        {
            names.AddFigure(name, dimension);
        }

        foreach (string feature in procedure.Features)
        {
            names.AddFeature(feature);
        }

        foreach (Step step in procedure.Steps)
        {
            names.AddStep(step);
        }

        return names;
    }

    /// <summary>The characteristic of that name, or null.</summary>
    public Characteristic? Characteristic(string name) => _characteristics.GetValueOrDefault(name);

    /// <summary>What can be decided about a subject, over all steps that decide it; null when none does.</summary>
    public NamedChoices? Decision(string subject) => _decisions.GetValueOrDefault(subject);

    /// <summary>What can be found about a subject, over all steps that inspect it; null when none does.</summary>
    public NamedChoices? Finding(string subject) => _findings.GetValueOrDefault(subject);

    /// <summary>What a formula may name in a step of the head (true) or at a position (false).</summary>
    public IFormulaNames For(bool ofHead) => new Visible(this, ofHead);

    /// <summary>Adds a characteristic; the head spec's limit of the same name is of its kind.</summary>
    public void AddCharacteristic(Characteristic characteristic)
    {
        _characteristics[characteristic.Name] = characteristic;
        AddLimit(characteristic.Name, characteristic.Dimension);
        AddPlaces(characteristic.Name, characteristic.Places);
    }

    /// <summary>Adds places that a step asks for beyond the characteristic's own.</summary>
    public void AddPlaces(string characteristic, IEnumerable<string> places)
    {
        if (!_places.TryGetValue(characteristic, out HashSet<string>? known))
        {
            _places[characteristic] = known = new HashSet<string>(StringComparer.Ordinal);
        }

        known.UnionWith(places);
    }

    /// <summary>Adds a limit of the head spec by the kind of quantity it is. The first that says so counts.</summary>
    public void AddLimit(string name, Dimension dimension) => _limits.TryAdd(name, dimension);

    /// <summary>Adds a figure that the head spec gives.</summary>
    public void AddFigure(string name, Dimension dimension) => _figures[name] = dimension;

    /// <summary>Adds a setting.</summary>
    public void AddSetting(string name, Dimension dimension) => _settings[name] = dimension;

    /// <summary>Adds a feature of the head.</summary>
    public void AddFeature(string name) => _features.Add(name);

    /// <summary>Adds choices of a decision to those that other steps gave it.</summary>
    public void AddDecision(string subject, bool ofHead, IEnumerable<string> choices) =>
        Add(_decisions, subject, ofHead, choices);

    /// <summary>Adds findings of an inspection to those that other steps gave it.</summary>
    public void AddFinding(string subject, bool ofHead, IEnumerable<string> findings) =>
        Add(_findings, subject, ofHead, findings);

    private static void Add(Dictionary<string, NamedChoices> to, string subject, bool ofHead, IEnumerable<string> words)
    {
        IReadOnlyList<string> before = to.TryGetValue(subject, out NamedChoices? known) ? known.Words : [];
        to[subject] = new NamedChoices(ofHead, [.. before.Union(words, StringComparer.Ordinal)]);
    }

    private void AddStep(Step step)
    {
        if (step.Taking is { } taking)
        {
            AddPlaces(taking.Characteristic, taking.Places);
            foreach ((string limit, string characteristic) in taking.SpecLimits)
            {
                // One that couldn't be read is missing; the file is refused for that.
                if (_characteristics.TryGetValue(characteristic, out Characteristic? judged))
                {
                    AddLimit(limit, judged.Dimension);
                }
            }
        }

        if (step.Work is StepWork.Decide decide)
        {
            AddDecision(decide.Subject, step.OfHead, decide.Choices);
        }
        else if (step.Work is StepWork.Inspect inspect)
        {
            AddFinding(step.Subject, step.OfHead, inspect.Findings.Select(finding => finding.Text));
        }
    }

    private FormulaType? TypeOf(string text, bool ofHead) =>
        FormulaName.Parse(text) switch
        {
            FormulaName.Value name => TypeOfValue(name.Characteristic, ofHead),
            FormulaName.ValueStatistic name => TypeOfStatistic(name, ofHead),
            FormulaName.ValueEach name => TypeOfValue(name.Characteristic, ofHead) is FormulaType.OfQuantity each
                ? new FormulaType.OfList(each.Dimension)
                : null,
            FormulaName.OverEach name => TypeOfEach(name, ofHead),
            FormulaName.ValuePlace name => _places.TryGetValue(name.Characteristic, out HashSet<string>? places)
            && places.Contains(name.Place)
                ? TypeOfValue(name.Characteristic, ofHead)
                : null,
            FormulaName.Over name => TypeOfOver(name, ofHead),
            FormulaName.AsFound name => TypeOfValue(name.Characteristic, ofHead),
            FormulaName.SpecFigure name => TypeIn(_figures, name.Figure),
            FormulaName.SpecLimit name => TypeIn(_limits, name.Limit),
            FormulaName.ShopSetting name => TypeIn(_settings, name.Setting),
            FormulaName.Decided name => TypeIn(_decisions, name.Subject, ofHead),
            FormulaName.Found name => TypeIn(_findings, name.Subject, ofHead),
            FormulaName.PositionsDecided name => _decisions.TryGetValue(name.Subject, out NamedChoices? choices)
            && !choices.OfHead
            && choices.Words.Contains(name.Choice, StringComparer.Ordinal)
                ? FormulaType.Number
                : null,
            FormulaName.Feature name => _features.Contains(name.Name) ? FormulaType.YesNo : null,
            FormulaName.OwnKind => ofHead ? null : FormulaType.Text,
            FormulaName.OwnCylinder => ofHead ? null : FormulaType.Number,
            FormulaName.OwnGuideAngle => ofHead ? null : FormulaType.Quantity(Dimension.OfAngle),
            _ => null,
        };

    private static FormulaType? TypeIn(Dictionary<string, Dimension> names, string name) =>
        names.TryGetValue(name, out Dimension dimension) ? FormulaType.Quantity(dimension) : null;

    private static FormulaType? TypeIn(Dictionary<string, NamedChoices> names, string name, bool ofHead) =>
        names.TryGetValue(name, out NamedChoices? choices) && (choices.OfHead || !ofHead) ? FormulaType.Text : null;

    private FormulaType? TypeOfValue(string name, bool ofHead) =>
        _characteristics.TryGetValue(name, out Characteristic? found) && (found.OfHead || !ofHead)
            ? FormulaType.Quantity(found.Dimension)
            : null;

    private FormulaType? TypeOfStatistic(FormulaName.ValueStatistic name, bool ofHead) =>
        TypeOfValue(name.Characteristic, ofHead) is FormulaType.OfQuantity type
            ? FormulaType.Quantity(name.Statistic == Statistic.Spread ? type.Dimension.OfDifference() : type.Dimension)
            : null;

    private FormulaType? TypeOfOver(FormulaName.Over name, bool ofHead)
    {
        bool there = _characteristics.TryGetValue(name.Characteristic, out Characteristic? found) && !found.OfHead;
        if (!there || (name.OwnKindOnly && ofHead))
        {
            return null;
        }

        return name.Summary switch
        {
            Statistic.Count => FormulaType.Number,
            Statistic.Spread => FormulaType.Quantity(found!.Dimension.OfDifference()),
            _ => FormulaType.Quantity(found!.Dimension),
        };
    }

    private FormulaType.OfList? TypeOfEach(FormulaName.OverEach name, bool ofHead) =>
        _characteristics.TryGetValue(name.Characteristic, out Characteristic? found)
        && !found.OfHead
        && !(name.OwnKindOnly && ofHead)
            ? new FormulaType.OfList(found.Dimension)
            : null;

    private IEnumerable<string> Every()
    {
        foreach (string name in _characteristics.Keys)
        {
            yield return name;
            yield return $"as found.{name}";
            yield return $"{name}.{FormulaName.Each}";
            foreach (string part in FormulaName.StatisticWords.Keys.Concat(_places.GetValueOrDefault(name) ?? []))
            {
                yield return $"{name}.{part}";
            }

            foreach (string summary in FormulaName.SummaryWords.Keys.Append(FormulaName.Each))
            {
                yield return $"all.{name}.{summary}";
                yield return $"kind.{name}.{summary}";
            }
        }

        IEnumerable<string> others = _figures
            .Keys.Select(name => $"spec.{name}")
            .Concat(
                _limits.Keys.SelectMany(name => new[] { $"spec.{name}.low", $"spec.{name}.aim", $"spec.{name}.high" })
            )
            .Concat(_settings.Keys.Select(name => $"setting.{name}"))
            .Concat(_findings.Keys.Select(name => $"found.{name}"))
            .Concat(_features.Select(name => $"feature.{name}"))
            .Concat(["kind", "cylinder", "guide angle"]);
        foreach (string name in others)
        {
            yield return name;
        }

        foreach ((string subject, NamedChoices choices) in _decisions)
        {
            yield return $"decided.{subject}";
            foreach (string choice in choices.Words)
            {
                yield return $"positions.{subject}.{choice}";
            }
        }
    }

    private sealed class Visible(ProcedureNames names, bool ofHead) : IFormulaNames
    {
        // Suggestions compare letter by letter with each of these; a real procedure has fewer.
        private const int MostSuggested = 2000;

        public IEnumerable<string> Known =>
            names.Every().Take(MostSuggested).Where(name => names.TypeOf(name, ofHead) is not null);

        public FormulaType? TypeOf(string name) => names.TypeOf(name, ofHead);
    }
}
