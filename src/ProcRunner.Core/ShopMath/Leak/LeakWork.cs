using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The table of leak tests.</summary>
internal static class LeakWork
{
    private const string Family = "leak";
    private static readonly WorkTakes Pressure = new WorkTakes.Amount(Units.Psi);
    private static readonly WorkTakes Vacuum = new WorkTakes.Amount(Units.InchOfMercury);

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        new()
        {
            Name = "leak-down",
            Family = Family,
            Summary = "percent of the supply that a cylinder lets go",
            Details = "Both are gauge pressures at the tester. The reject limit is the maker's or the shop's.",
            Parameters =
            [
                new("supply", Pressure, "regulated pressure before the orifice"),
                new("held", Pressure, "pressure that the cylinder holds"),
            ],
            Source = "definition of the leak-down percentage",
            Gives = WorkGives.Of(Dimension.None, "leak-down"),
            Examples =
            [
                new(
                    "supply=80 psi; held=60 psi",
                    "leak-down=25 %",
                    "two makers' published test procedures: reject above 25 %, at 80 psi at least 60 psi must hold"
                ),
                new("supply=552 kPa; held=414 kPa", "leak-down=25 %", "the same in kPa, as printed there"),
            ],
            Work = all =>
                Working.OneStep(
                    all,
                    LeakTest.LeakDown(all.Amount("supply"), all.Amount("held")),
                    "leak-down",
                    "({supply} - {held}) / {supply}",
                    Units.Percent,
                    Units.Percent
                ),
        },
        new()
        {
            Name = "seal-share",
            Family = Family,
            Summary = "vacuum a port holds as a part of the blocked-pump reading",
            Details =
                "Compare ports of one head tested in one way: springs on or off, stems oiled or dry. Guides leak too. The limit is the shop's.",
            Parameters =
            [
                new("held", Vacuum, "vacuum at the port"),
                new("blocked", Vacuum, "vacuum with the hose blocked"),
            ],
            Source = "definition of a ratio of readings",
            Gives = WorkGives.Of(Dimension.None, "seal share"),
            Examples = [new("held=20 inHg; blocked=25 inHg", "seal share=80 %", "20/25 by hand")],
            Work = all =>
                Working.OneStep(
                    all,
                    LeakTest.SealShare(all.Amount("held"), all.Amount("blocked")),
                    "seal share",
                    "{held} / {blocked}",
                    Units.Percent,
                    Units.Percent
                ),
        },
        new()
        {
            Name = "leak-rate",
            Family = Family,
            Summary = "leak rate from how fast a closed volume loses pressure or vacuum",
            Details =
                "Volume of port, hose and cup together, pump shut off. Isothermal ideal gas, the leak small against the volume.",
            Parameters =
            [
                new("volume", new WorkTakes.Amount(Units.CubicCentimetre), "of port, hose and cup together"),
                new("start", Vacuum, "reading at the start"),
                new("end", Vacuum, "reading at the end"),
                new("time", new WorkTakes.Amount(Units.Second), "between the two"),
            ],
            Source = "ideal gas: Q = V dP / dt",
            Gives = WorkGives.Of(Dimension.OfLeakRate, "leak rate"),
            Examples =
            [
                new(
                    "volume=200 cm3; start=25 inHg; end=20 inHg; time=10 s",
                    "leak rate=0.338639 Pa\u00B7m3/s",
                    "worked by hand from conventional mercury, NIST SP 811 (2008), appendix B.8"
                ),
            ],
            Work = all =>
                Working.OneStep(
                    all,
                    LeakTest.DecayRate(
                        all.Amount("volume"),
                        all.Amount("start"),
                        all.Amount("end"),
                        all.Amount("time")
                    ),
                    "leak rate",
                    "{volume} x ({start} - {end}) / {time}",
                    Units.PascalCubicMetrePerSecond,
                    Units.PascalCubicMetrePerSecond
                ),
        },
    ];
}
