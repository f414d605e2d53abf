using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>Play of a stem from a dial that is rocked from side to side; exact.</summary>
public static class RockReading
{
    /// <summary>
    /// Clearance from the full reading. Leaning: the stem touches the guide at both ends, so it leans by clearance / guide length
    /// and, an overhang past the end, stands off the middle by clearance (1/2 + overhang / guide length) on each side; hence
    /// clearance = rock / (1 + 2 overhang / guide length). Plane geometry, small angle, sharp guide ends: worn, bell-mouthed ends read as
    /// more.
    /// </summary>
    /// <param name="rock">Full reading, side to side, not below 0.</param>
    /// <param name="method">How it was taken.</param>
    /// <param name="guideLength">Above 0; only for <see cref="RockMethod.Tilt"/>.</param>
    /// <param name="overhang">From the guide's end to the dial, not below 0; only for <see cref="RockMethod.Tilt"/>.</param>
    public static ShopResult<Exact> Clearance(Exact rock, RockMethod method, Exact? guideLength, Exact? overhang)
    {
        if (Allowed.NotBelow0("rock", rock) is { } fault)
        {
            return fault;
        }

        return method switch
        {
            RockMethod.Half => rock with { Value = rock.Value / Rational.FromInteger(2) },
            RockMethod.Straight => rock,
            _ => guideLength is { } length && overhang is { } past
                ? Leaning(rock, length, past)
                : new ShopFault(
                    guideLength is null ? "guide length" : "overhang",
                    "nothing",
                    "a leaning stem needs both"
                ),
        };
    }

    private static ShopResult<Exact> Leaning(Exact rock, Exact guideLength, Exact overhang) =>
        (Allowed.Above0("guide length", guideLength) ?? Allowed.NotBelow0("overhang", overhang)) is { } fault
            ? fault
            : rock * guideLength / (guideLength + overhang + overhang);
}
