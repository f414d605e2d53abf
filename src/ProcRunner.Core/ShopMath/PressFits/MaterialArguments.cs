using System.Globalization;
using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>Parameters for a part's material: a name from the table, figures of one's own, or both, where the own figure counts.</summary>
internal static class MaterialArguments
{
    private static readonly WorkTakes Names = new WorkTakes.Word([.. Material.All.Select(one => one.Name)]);

    public static IReadOnlyList<WorkParameter> Elastic(string part) =>
        [
            Named(part),
            new(
                $"{part}-modulus",
                new WorkTakes.Amount(Units.Gigapascal),
                "modulus of elasticity, instead of the material's",
                true
            ),
            new($"{part}-poisson", new WorkTakes.Amount(Units.One), "Poisson's ratio, instead of the material's", true),
        ];

    public static IReadOnlyList<WorkParameter> Expanding(string part) =>
        [
            Named(part),
            new(
                $"{part}-expansion",
                new WorkTakes.Amount(Units.PerKelvin),
                "expansion, instead of the material's",
                true
            ),
        ];

    public static ShopResult<Elasticity> Elasticity(WorkArguments all, string part)
    {
        Material? material = Material.Find(all.Word($"{part}-material"));
        double? modulus = all.Has($"{part}-modulus")
            ? all.In($"{part}-modulus", Units.Megapascal)
            : (double?)(material?.ModulusGigapascals * 1000);
        double? poisson = all.Has($"{part}-poisson")
            ? all.In($"{part}-poisson", Units.One)
            : (double?)material?.Poisson;
        return modulus is null ? Missing(part, "modulus", material)
            : poisson is null ? Missing(part, "poisson", material)
            : new Elasticity(modulus.Value, poisson.Value);
    }

    public static ShopResult<Exact> Expansion(WorkArguments all, string part)
    {
        Material? material = Material.Find(all.Word($"{part}-material"));
        Exact? expansion = all.Has($"{part}-expansion") ? all.Amount($"{part}-expansion") : material?.Expansion;
        return expansion is { } known ? known : Missing(part, "expansion", material);
    }

    /// <summary>What the working shows for the figures used, with where the table's are from.</summary>
    public static string Show(WorkArguments all, string part, string figure, double value, string unit) =>
        all.Texts.GetValueOrDefault($"{part}-{figure}")
        ?? string.Create(CultureInfo.InvariantCulture, $"{value:0.##########} {unit}").TrimEnd();

    private static WorkParameter Named(string part) =>
        new($"{part}-material", Names, $"material of the {part} part, from the table", IsOptional: true);

    private static ShopFault Missing(string part, string figure, Material? material) =>
        new(
            $"{part} {figure}",
            material?.Name ?? "nothing",
            material is null
                ? $"give it, or {part}-material"
                : $"the table has no {figure} of it, so give it{Note(material, figure)}"
        );

    // A note is about the expansion, or else about the modulus.
    private static string Note(Material material, string figure) =>
        figure != "poisson"
        && material.Note.Length > 0
        && material.Note.StartsWith("expansion", StringComparison.Ordinal) == (figure == "expansion")
            ? $" ({material.Note})"
            : "";
}
