using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Formulas;

/// <summary>Leak tests and the rocked dial; all exact.</summary>
internal static class TestFunctions
{
    private static readonly FormulaTakes Length = new FormulaTakes.A(Dimension.OfLength);
    private static readonly FormulaTakes Pressure = new FormulaTakes.A(Dimension.OfPressure);

    public static IReadOnlyList<FormulaFunction> Table { get; } =
    [
        new()
        {
            Name = "leakdown",
            Parameters = [new("supply", Pressure), new("held", Pressure)],
            Gives = new FormulaGives.A(Dimension.None),
            Summary = "part of the supply that a cylinder lets go",
            Details = "Gauge pressures at the tester.",
            Relation = "(supply - held) / supply",
            Source = "definition of the leak-down percentage",
            Examples = [new("leakdown('80 psi', '60 psi')", "25 %")],
            Work = new FormulaWork.Numbers(all =>
                FormulaNumber.Of(LeakTest.LeakDown(PressureOf(all[0]), PressureOf(all[1])))
            ),
        },
        new()
        {
            Name = "sealshare",
            Parameters = [new("held", Pressure), new("blocked", Pressure)],
            Gives = new FormulaGives.A(Dimension.None),
            Summary = "vacuum a port holds as a part of the blocked-pump reading",
            Details = "Compare ports of one head tested in one way.",
            Relation = "held / blocked",
            Source = "definition of a ratio of readings",
            Examples = [new("sealshare('20 inHg', '25 inHg')", "80 %")],
            Work = new FormulaWork.Numbers(all =>
                FormulaNumber.Of(LeakTest.SealShare(PressureOf(all[0]), PressureOf(all[1])))
            ),
        },
        new()
        {
            Name = "leakrate",
            Parameters =
            [
                new("volume", new FormulaTakes.A(Dimension.OfVolume)),
                new("start", Pressure),
                new("end", Pressure),
                new("time", new FormulaTakes.A(Dimension.OfTime)),
            ],
            Gives = new FormulaGives.A(Dimension.OfLeakRate),
            Summary = "leak rate from how fast a closed volume loses pressure or vacuum",
            Details = "Volume of port, hose and cup together, pump shut off.",
            Relation = "volume x abs(start - end) / time",
            Source = "ideal gas at one temperature: Q = V dP / dt",
            Examples = [new("leakrate('200 cm3', '25 inHg', '20 inHg', '10 s')", "0.338639 Pa\u00B7m3/s")],
            Work = new FormulaWork.Numbers(all =>
                FormulaNumber.Of(
                    LeakTest.DecayRate(
                        new Exact(all[0], Dimension.OfVolume),
                        PressureOf(all[1]),
                        PressureOf(all[2]),
                        new Exact(all[3], Dimension.OfTime)
                    )
                )
            ),
        },
        new()
        {
            Name = "rockclearance",
            Parameters = [new("rock", Length), new("guide length", Length), new("overhang", Length)],
            Gives = new FormulaGives.A(Dimension.OfLength),
            Summary = "play of a stem that leans under a rocked dial",
            Details =
                "Rock is the full reading, side to side; overhang is from the guide's end to the dial. A stem pushed across without "
                + "leaning reads its clearance itself: use the limit made for the method.",
            Relation = "rock / (1 + 2 overhang / guide length)",
            Source = "plane geometry of a straight stem touching both ends of its guide",
            Examples = [new("rockclearance('0.010 in', '2.0 in', '1.5 in')", "0.004 in")],
            Work = new FormulaWork.Numbers(all =>
                FormulaNumber.Of(
                    RockReading.Clearance(LengthOf(all[0]), RockMethod.Tilt, LengthOf(all[1]), LengthOf(all[2]))
                )
            ),
        },
    ];

    private static Exact PressureOf(Rational value) => new(value, Dimension.OfPressure);

    private static Exact LengthOf(Rational millimetres) => new(millimetres, Dimension.OfLength);
}
