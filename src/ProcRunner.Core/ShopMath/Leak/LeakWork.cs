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
            Examples =
            [
                new(
                    "supply=80 psi; held=60 psi",
                    "leak-down=25 %",
                    "a car maker's test procedure: reject above 25 %, at 80 psi at least 60 psi must hold"
                ),
                new("supply=552 kPa; held=414 kPa", "leak-down=25 %", "the same in kPa, as printed there"),
            ],
            Work = all =>
                LeakTest
                    .LeakDown(all.Amount("supply"), all.Amount("held"))
                    .Then(part =>
                    {
                        Working working = new(all);
                        working.Step("leak-down", "({supply} - {held}) / {supply}", part, Units.Percent, Units.Percent);
                        return working.Done();
                    }),
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
            Examples = [new("held=20 inHg; blocked=25 inHg", "seal share=80 %", "20/25 by hand")],
            Work = all =>
                LeakTest
                    .SealShare(all.Amount("held"), all.Amount("blocked"))
                    .Then(part =>
                    {
                        Working working = new(all);
                        working.Step("seal share", "{held} / {blocked}", part, Units.Percent, Units.Percent);
                        return working.Done();
                    }),
        },
    ];
}
