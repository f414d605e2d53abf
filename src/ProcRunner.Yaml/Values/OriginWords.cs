using ProcRunner.Procedures;

namespace ProcRunner.Yaml.Values;

/// <summary>How files write who a figure comes from.</summary>
internal static class OriginWords
{
    public static IReadOnlyDictionary<string, Origin> Table { get; } =
        new Dictionary<string, Origin>(StringComparer.Ordinal)
        {
            ["maker"] = Origin.Maker,
            ["standard"] = Origin.Standard,
            ["shop"] = Origin.Shop,
            ["rule of thumb"] = Origin.RuleOfThumb,
        };
}
