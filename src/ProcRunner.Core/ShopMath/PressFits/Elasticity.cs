namespace ProcRunner.ShopMath;

/// <summary>How a material yields, elastically.</summary>
/// <param name="ModulusMegapascals">Modulus of elasticity in tension, above 0.</param>
/// <param name="Poisson">Poisson's ratio, 0 to 0.5.</param>
public sealed record Elasticity(double ModulusMegapascals, double Poisson)
{
    // Names as the calculator's parameters have them: "outer modulus", "inner poisson".
    internal ShopFault? Check(string part) =>
        Allowed.Above0($"{part} modulus", ModulusMegapascals, "MPa")
        ?? Allowed.Within($"{part} poisson", Poisson, 0, 0.5, "");
}
