namespace ProcRunner.Procedures;

/// <summary>
/// A name between the brackets of a formula, taken apart: <c>[all.recession.spread]</c> is the spread of recession over
/// all positions. Its meaning depends on the text alone; whether the thing exists, <see cref="ProcedureNames"/> knows.
/// </summary>
public abstract record FormulaName
{
    private static readonly Dictionary<string, Statistic> Statistics = new(StringComparer.Ordinal)
    {
        ["largest"] = Statistic.Largest,
        ["deepest"] = Statistic.Largest,
        ["smallest"] = Statistic.Smallest,
        ["shallowest"] = Statistic.Smallest,
        ["mean"] = Statistic.Mean,
        ["spread"] = Statistic.Spread,
    };

    private static readonly Dictionary<string, Statistic> Summaries = new(Statistics, StringComparer.Ordinal)
    {
        ["median"] = Statistic.Median,
        ["count"] = Statistic.Count,
    };

    private static readonly Dictionary<string, LimitEnd> Ends = new(StringComparer.Ordinal)
    {
        ["low"] = LimitEnd.Low,
        ["aim"] = LimitEnd.Aim,
        ["high"] = LimitEnd.High,
    };

    /// <summary>The word for all values one by one, as a list.</summary>
    public const string Each = "each";

    private FormulaName() { }

    /// <summary>Words for what is taken of several places, as procedure files write them.</summary>
    public static IReadOnlyDictionary<string, Statistic> StatisticWords => Statistics;

    /// <summary>Words for what is taken of several positions, as formulas write them.</summary>
    public static IReadOnlyDictionary<string, Statistic> SummaryWords => Summaries;

    /// <summary>Words that mean something of their own in formulas, so that no characteristic may be called so.</summary>
    public static IReadOnlyList<string> Reserved { get; } =
    [
        "all",
        "kind",
        "as found",
        "spec",
        "setting",
        "decided",
        "found",
        "positions",
        "feature",
        "cylinder",
        "guide angle",
    ];

    /// <summary>The characteristic whose values as they are now it reads; null for all else: what was as found is history.</summary>
    public string? ReadsNow =>
        this switch
        {
            Value one => one.Characteristic,
            ValueStatistic one => one.Characteristic,
            ValuePlace one => one.Characteristic,
            ValueEach one => one.Characteristic,
            Over one => one.Characteristic,
            OverEach one => one.Characteristic,
            _ => null,
        };

    /// <summary>Takes a name apart. Never fails for a text that a <c>Known</c> list holds; null for a shape that means nothing.</summary>
    public static FormulaName? Parse(string name)
    {
        string[] parts = name.Split('.');
        return parts switch
        {
            ["kind"] => new OwnKind(),
            ["cylinder"] => new OwnCylinder(),
            ["guide angle"] => new OwnGuideAngle(),
            ["spec", var figure] => new SpecFigure(figure),
            ["spec", var limit, var end] => Ends.TryGetValue(end, out LimitEnd which)
                ? new SpecLimit(limit, which)
                : null,
            ["setting", var setting] => new ShopSetting(setting),
            ["decided", var subject] => new Decided(subject),
            ["found", var subject] => new Found(subject),
            ["feature", var feature] => new Feature(feature),
            ["positions", var subject, var choice] => new PositionsDecided(subject, choice),
            ["as found", var characteristic] => new AsFound(characteristic),
            ["all" or "kind", var characteristic, Each] => new OverEach(
                characteristic,
                OwnKindOnly: parts[0] == "kind"
            ),
            ["all" or "kind", var characteristic, var summary] => Summaries.TryGetValue(summary, out Statistic over)
                ? new Over(characteristic, over, OwnKindOnly: parts[0] == "kind")
                : null,
            [var characteristic] => new Value(characteristic),
            [var characteristic, Each] => new ValueEach(characteristic),
            [var characteristic, var part] => Statistics.TryGetValue(part, out Statistic statistic)
                ? new ValueStatistic(characteristic, statistic)
                : new ValuePlace(characteristic, part),
            _ => null,
        };
    }

    /// <summary><c>[X]</c>: the value of a characteristic at this position or of the head.</summary>
    /// <param name="Characteristic">The characteristic.</param>
    public sealed record Value(string Characteristic) : FormulaName;

    /// <summary><c>[X.deepest]</c>: a statistic of its places.</summary>
    /// <param name="Characteristic">The characteristic.</param>
    /// <param name="Statistic">Which.</param>
    public sealed record ValueStatistic(string Characteristic, Statistic Statistic) : FormulaName;

    /// <summary><c>[X.top]</c>: one of its places.</summary>
    /// <param name="Characteristic">The characteristic.</param>
    /// <param name="Place">Which.</param>
    public sealed record ValuePlace(string Characteristic, string Place) : FormulaName;

    /// <summary><c>[all.X.spread]</c> or <c>[kind.X.spread]</c>: over positions.</summary>
    /// <param name="Characteristic">The characteristic.</param>
    /// <param name="Summary">What is taken.</param>
    /// <param name="OwnKindOnly">True: only positions of this position's kind.</param>
    public sealed record Over(string Characteristic, Statistic Summary, bool OwnKindOnly) : FormulaName;

    /// <summary><c>[X.each]</c>: the values at its places, in the order of the places, as a list.</summary>
    /// <param name="Characteristic">The characteristic.</param>
    public sealed record ValueEach(string Characteristic) : FormulaName;

    /// <summary>
    /// <c>[all.X.each]</c> or <c>[kind.X.each]</c>: the values at positions, in their order, as a list that is not known
    /// before every one of them is, so that two lists can't slip against each other.
    /// </summary>
    /// <param name="Characteristic">The characteristic.</param>
    /// <param name="OwnKindOnly">True: only positions of this position's kind.</param>
    public sealed record OverEach(string Characteristic, bool OwnKindOnly) : FormulaName;

    /// <summary><c>[as found.X]</c>: as it came, from a stage that records the head as found.</summary>
    /// <param name="Characteristic">The characteristic.</param>
    public sealed record AsFound(string Characteristic) : FormulaName;

    /// <summary><c>[spec.X]</c>: a figure of the head spec.</summary>
    /// <param name="Figure">Its name.</param>
    public sealed record SpecFigure(string Figure) : FormulaName;

    /// <summary><c>[spec.X.high]</c>: one end of a limit of the head spec.</summary>
    /// <param name="Limit">Its name.</param>
    /// <param name="End">Which end.</param>
    public sealed record SpecLimit(string Limit, LimitEnd End) : FormulaName;

    /// <summary><c>[setting.X]</c>: a setting of the procedure.</summary>
    /// <param name="Setting">Its name.</param>
    public sealed record ShopSetting(string Setting) : FormulaName;

    /// <summary><c>[decided.X]</c>: what was decided.</summary>
    /// <param name="Subject">About what.</param>
    public sealed record Decided(string Subject) : FormulaName;

    /// <summary><c>[found.X]</c>: what an inspection found.</summary>
    /// <param name="Subject">About what.</param>
    public sealed record Found(string Subject) : FormulaName;

    /// <summary><c>[positions.X.CHOICE]</c>: how many positions were decided so.</summary>
    /// <param name="Subject">About what.</param>
    /// <param name="Choice">Which choice.</param>
    public sealed record PositionsDecided(string Subject, string Choice) : FormulaName;

    /// <summary><c>[feature.X]</c>: whether the head has it.</summary>
    /// <param name="Name">Which feature.</param>
    public sealed record Feature(string Name) : FormulaName;

    /// <summary><c>[kind]</c>: this position's kind.</summary>
    public sealed record OwnKind : FormulaName;

    /// <summary><c>[cylinder]</c>: this position's cylinder, a number.</summary>
    public sealed record OwnCylinder : FormulaName;

    /// <summary><c>[guide angle]</c>: this position's guide angle.</summary>
    public sealed record OwnGuideAngle : FormulaName;
}
