using ProcRunner.Procedures;
using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>A name that formulas read, looked up in a plan once: what it means there, and its amounts where no run changes them.</summary>
internal sealed class PlanName
{
    // By position, the head first; null for what a run gives, chooses or decides.
    private readonly Exact?[]? _fixed;

    private PlanName(Plan plan, FormulaName name)
    {
        Name = name;
        Characteristic =
            CharacteristicOf(name) is { } characteristic && plan.TryCharacteristic(characteristic, out int index)
                ? index
                : -1;
        IsOfHead = Characteristic >= 0 && plan.CharacteristicAt(Characteristic).OfHead;
        _fixed = Fixed(plan, name);
    }

    /// <summary>What the name means.</summary>
    public FormulaName Name { get; }

    /// <summary>Index of the characteristic that it reads; -1 for none.</summary>
    public int Characteristic { get; }

    /// <summary>True when that characteristic is one of the head.</summary>
    public bool IsOfHead { get; }

    /// <summary>True when nothing in a run changes its amount.</summary>
    public bool IsFixed => _fixed is not null;

    /// <summary>A name of a plan, or null when it means nothing.</summary>
    public static PlanName? Of(Plan plan, string text) =>
        FormulaName.Parse(text) is { } name ? new PlanName(plan, name) : null;

    /// <summary>The fixed amount seen from a position, or <see cref="At.Head"/>; null when there is none there.</summary>
    public Exact? FixedAt(int position) => _fixed?[position + 1];

    private static string? CharacteristicOf(FormulaName name) =>
        name is FormulaName.AsFound found ? found.Characteristic : name.ReadsNow;

    private static Exact?[]? Fixed(Plan plan, FormulaName name)
    {
        if (name is FormulaName.SpecLimit limit && plan.IsChosenInRuns(limit.Limit))
        {
            return null;
        }

        return
            name
                is FormulaName.SpecFigure
                    or FormulaName.SpecLimit
                    or FormulaName.ShopSetting
                    or FormulaName.OwnCylinder
                    or FormulaName.OwnGuideAngle
            ? [.. Enumerable.Range(At.Head, plan.Positions.Count + 1).Select(position => Fixed(plan, name, position))]
            : null;
    }

    private static Exact? Fixed(Plan plan, FormulaName name, int position)
    {
        Position? here = plan.PositionOf(position);
        return name switch
        {
            FormulaName.SpecFigure one => Amount(plan.Head.FigureOf(one.Figure, here)?.Value),
            FormulaName.SpecLimit one when plan.LimitAt(one.Limit, position) is { } limit => LimitFinder.EndOf(
                (limit.Low, limit.Aim, limit.High),
                one.End
            ),
            FormulaName.ShopSetting one => Amount(plan.Procedure.Settings.GetValueOrDefault(one.Setting)?.Value),
            FormulaName.OwnCylinder when here is not null => new Exact(
                Rational.FromInteger(here.Cylinder),
                Dimension.None
            ),
            FormulaName.OwnGuideAngle when here is not null => Amount(new Quantity(here.GuideAngle, Units.Degree)),
            _ => null,
        };
    }

    private static Exact? Amount(Quantity? quantity) => quantity is { } value ? Exact.Of(value) : null;
}
