using ProcRunner.Quantities;
using ProcRunner.ShopMath;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Maths;

/// <summary>Where the shop's maths is worked from: whose frame it is, which units are usual there, which numbers are at hand.</summary>
/// <param name="Words">What the frame says besides.</param>
/// <param name="IsPractice">True for a practice head.</param>
/// <param name="IsInch">True where a number without a unit is taken in inches and their kin.</param>
/// <param name="Known">What the head has now at this place, the step's own numbers first; empty away from a head.</param>
internal sealed record MathsDesk(IFrameWords Words, bool IsPractice, bool IsInch, IReadOnlyList<KnownNumber> Known)
{
    /// <summary>How the readout is set up, by the words that calculations ask for; empty where that is no matter.</summary>
    public IReadOnlyDictionary<string, string> Setting { get; init; } = new Dictionary<string, string>();

    /// <summary>What every page of it says.</summary>
    public const string Promise = "Nothing here is recorded or changes a job.";

    // They take any limits and readings: no step's numbers are nearer to them than another's.
    private static readonly string[] General = ["measurement", "statistics"];

    private static readonly (Unit Metric, Unit Inch)[] Kin =
    [
        (Units.Millimetre, Units.Inch),
        (Units.Micrometre, Units.Microinch),
        (Units.Newton, Units.PoundForce),
        (Units.NewtonPerMillimetre, Units.PoundForcePerInch),
        (Units.NewtonMetre, Units.PoundForceFoot),
        (Units.Kilopascal, Units.Psi),
        (Units.Megapascal, Units.Psi),
        (Units.SquareCentimetre, Units.SquareInch),
        (Units.CubicCentimetre, Units.CubicInch),
        (Units.Celsius, Units.Fahrenheit),
        (Units.KelvinDifference, Units.FahrenheitDifference),
        (Units.MetrePerMinute, Units.FootPerMinute),
        (Units.MillimetrePerTurn, Units.InchPerTurn),
    ];

    /// <summary>The unit that a number typed without one has; null where it needs none or must say its own.</summary>
    public Unit? UnitOf(WorkParameter parameter)
    {
        Unit? usual = parameter.Takes switch
        {
            WorkTakes.Amount amount => amount.Unit,
            WorkTakes.Amounts amounts => amounts.Unit,
            _ => null,
        };
        return usual is null || usual.Dimension == Dimension.None ? null
            : IsInch ? Kin.FirstOrDefault(kin => kin.Metric == usual).Inch ?? usual
            : usual;
    }

    /// <summary>The numbers at hand that a parameter can take.</summary>
    public IEnumerable<KnownNumber> For(WorkParameter parameter) =>
        parameter.Takes switch
        {
            WorkTakes.Amount amount => Known.Where(one =>
                one.Values.Count == 1 && one.Dimension == amount.Unit.Dimension && one.Dimension != Dimension.None
            ),
            WorkTakes.Amounts amounts => Known.Where(one =>
                one.Dimension == amounts.Unit.Dimension && one.Dimension != Dimension.None
            ),
            WorkTakes.Alike alike => Known.Where(one =>
                one.Dimension != Dimension.None && one.Values.Count >= alike.Least && one.Values.Count <= alike.Most
            ),
            _ => [],
        };

    /// <summary>The number at hand that is meant by a parameter's name; null where none is.</summary>
    public KnownNumber? Meant(WorkParameter parameter) =>
        For(parameter).FirstOrDefault(one => one.Name == parameter.Words);

    /// <summary>The word at hand that a parameter means; null where none is.</summary>
    public string? WordFor(WorkParameter parameter) =>
        parameter.Takes is WorkTakes.Word word
        && Setting.TryGetValue(parameter.Name, out string? set)
        && word.Choices.Contains(set)
            ? set
            : null;

    /// <summary>The calculations that the numbers at hand fill in best; at least two of those that each asks for are known.</summary>
    public IEnumerable<WorkFunction> Nearest() =>
        WorkFunctions
            .All.Where(function => !General.Contains(function.Family))
            .Where(function => function.Parameters.Count(one => Meant(one) is not null) >= 2)
            .Select(function => (function, Filled: function.Parameters.Count(IsKnown)))
            .OrderByDescending(one => one.Filled / (double)one.function.Parameters.Count(p => !p.IsOptional))
            .Select(one => one.function);

    private bool IsKnown(WorkParameter parameter) => Meant(parameter) is not null || WordFor(parameter) is not null;
}
