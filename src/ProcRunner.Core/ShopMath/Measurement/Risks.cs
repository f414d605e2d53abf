namespace ProcRunner.ShopMath;

/// <summary>Over many things made and measured alike (JCGM 106:2012, 9.5); each a part of all that are made.</summary>
/// <param name="Conforming">What lies in the tolerance.</param>
/// <param name="Consumer">Bad and accepted.</param>
/// <param name="Producer">Good and rejected.</param>
public sealed record Risks(double Conforming, double Consumer, double Producer);
