using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>
/// Figures of a material at room temperature, to start from: the data sheet of the part in hand comes first. Each says where it is
/// from; a figure that no table at hand has is left out and must be given.
/// </summary>
/// <param name="Name">As it is typed.</param>
/// <param name="ExpansionPerKelvin">Linear thermal expansion, 1/K; null if unknown.</param>
/// <param name="ModulusGigapascals">Modulus of elasticity; null if unknown or if the table gives only a wide range.</param>
/// <param name="Poisson">Poisson's ratio; null if unknown.</param>
/// <param name="Origin">Where the figures are from.</param>
/// <param name="Note">What else is known, such as a range; may be empty.</param>
public sealed record Material(
    string Name,
    decimal? ExpansionPerKelvin,
    decimal? ModulusGigapascals,
    decimal? Poisson,
    string Origin,
    string Note = ""
)
{
    private const string Callister =
        "Callister, Materials Science and Engineering, Appendix B, Tables B.2 (modulus) and B.6 (expansion)";
    private const string PoissonMemory = "; Poisson's ratio from memory";
    private const string Textbook = "engineering textbook table of moduli and Poisson's ratios";
    private const string Secant = "grey iron has no one modulus: it is a secant value, ";

    /// <summary>All materials, head first, then what is pressed in.</summary>
    public static IReadOnlyList<Material> All { get; } =
    [
        new(
            "grey-iron-g1800",
            11.4e-6m,
            null,
            0.26m,
            Callister + PoissonMemory,
            Secant + "66 to 97 GPa for this grade"
        ),
        new(
            "grey-iron-g3000",
            11.4e-6m,
            null,
            0.26m,
            Callister + PoissonMemory,
            Secant + "90 to 113 GPa for this grade"
        ),
        new(
            "grey-iron-g4000",
            11.4e-6m,
            null,
            0.26m,
            Callister + PoissonMemory,
            Secant + "110 to 138 GPa for this grade"
        ),
        new(
            "grey-iron",
            10.8e-6m,
            100m,
            0.211m,
            Textbook + "; expansion Elements of Metric Gear Technology, p. 201, 6.0e-6 1/degF from 32 to 212 degF",
            "14.5 Mpsi in print"
        ),
        new("ductile-iron-60-40-18", 11.2e-6m, 169m, 0.28m, Callister + PoissonMemory),
        new("ductile-iron-80-55-06", 10.6e-6m, 168m, 0.28m, Callister + PoissonMemory),
        new("aluminium-356", 21.5e-6m, 72.4m, 0.33m, Callister + PoissonMemory, "a casting alloy of heads"),
        new("steel-1020", 11.7e-6m, 207m, 0.292m, Callister + "; Poisson's ratio " + Textbook),
        new("steel-1040", 11.3e-6m, 207m, 0.30m, Callister + PoissonMemory),
        new("steel-4140", 12.3e-6m, 207m, 0.30m, Callister + PoissonMemory),
        new("stainless-304", 17.2e-6m, 193m, 0.305m, Callister + "; Poisson's ratio " + Textbook),
        new("stainless-316", 15.9e-6m, 193m, 0.305m, Callister + "; Poisson's ratio " + Textbook),
        new("stainless-440a", 10.2e-6m, 200m, 0.305m, Callister + "; Poisson's ratio " + Textbook),
        new(
            "nickel-200",
            13.3e-6m,
            204m,
            0.31m,
            Callister + "; modulus from memory, Poisson's ratio of a strength table"
        ),
        new("alloy-625", 12.8e-6m, 207m, 0.31m, Callister + "; modulus and Poisson's ratio from memory"),
        new("phosphor-bronze", null, 111m, 0.349m, Textbook, "expansion 17e-6 to 18e-6 1/K in print"),
        new("bronze-c93200", 18.0e-6m, null, null, Callister),
        new("iron-powder-metal", null, null, null, "gear handbook", "83 to 172 GPa in print: use the data sheet"),
    ];

    /// <summary>The material of a name; null if there is none.</summary>
    public static Material? Find(string name) => All.FirstOrDefault(one => one.Name == name);

    /// <summary>The expansion as an amount; null if unknown.</summary>
    public Exact? Expansion => ExpansionPerKelvin is { } value ? Exact.Of(new Quantity(value, Units.PerKelvin)) : null;
}
