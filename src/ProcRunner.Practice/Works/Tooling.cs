using ProcRunner.Practice.Heads;
using ProcRunner.Quantities;

namespace ProcRunner.Practice.Works;

/// <summary>Errors of tools and hands by name, in base units; 0 for what isn't given.</summary>
internal sealed class Tooling(IReadOnlyDictionary<string, Quantity> tools)
{
    /// <summary>The names there are, each with what it is.</summary>
    public static IReadOnlyDictionary<string, Dimension> Known { get; } =
        new Dictionary<string, Dimension>(StringComparer.Ordinal)
        {
            ["touch off"] = Dimension.OfLength,
            ["stop"] = Dimension.OfLength,
            ["spindle"] = Dimension.OfLength,
            ["flex"] = Dimension.None,
            ["edge wear"] = Dimension.OfLength,
            ["backlash"] = Dimension.OfLength,
            ["guide sizing"] = Dimension.OfLength,
            ["guide sizing each"] = Dimension.OfLength,
            ["guide axis shift"] = Dimension.OfLength,
            ["press stop"] = Dimension.OfLength,
            ["axis to axis"] = Dimension.OfLength,
            ["boring"] = Dimension.OfLength,
            ["boring each"] = Dimension.OfLength,
            ["insert not bottomed"] = Dimension.None,
            ["not bottomed by"] = Dimension.OfLength,
            ["insert centring"] = Dimension.OfLength,
            ["pilot centring"] = Dimension.OfLength,
            ["seat clean-up"] = Dimension.OfLength,
            ["narrowing"] = Dimension.OfLength,
            ["contact shift of intakes"] = Dimension.OfLength,
            ["least reface"] = Dimension.OfLength,
            ["reface angle"] = Dimension.OfAngle,
            ["reface angle error"] = Dimension.OfAngle,
            ["refaced runout"] = Dimension.OfLength,
            ["tip ground"] = Dimension.OfLength,
            ["levelling"] = Dimension.OfLength,
            ["deck form left"] = Dimension.OfLength,
            ["finish left"] = Dimension.OfLength,
            ["finish error"] = Dimension.OfLength,
            ["shim step"] = Dimension.OfLength,
            ["skim margin"] = Dimension.OfLength,
            ["made insert"] = Dimension.OfLength,
            ["room error"] = Dimension.OfTemperatureDifference,
            ["oven"] = Dimension.OfTemperatureDifference,
            ["chill"] = Dimension.OfTemperatureDifference,
        };

    private readonly Dictionary<string, double> _tools = tools.ToDictionary(
        t => t.Key,
        t => PracticeHead.InBase(t.Value),
        StringComparer.Ordinal
    );

    public double this[string name] => _tools.GetValueOrDefault(name);
}
