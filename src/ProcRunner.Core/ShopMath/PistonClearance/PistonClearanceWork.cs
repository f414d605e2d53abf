using ProcRunner.Quantities;
using static ProcRunner.ShopMath.HeightWork;

namespace ProcRunner.ShopMath;

/// <summary>The table of valve-to-piston clearance.</summary>
internal static class PistonClearanceWork
{
    // Of these a formula can ask one by one; the smallest is of any number.
    private const int MostCylinders = 12;

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        new()
        {
            Name = "piston-clearance",
            Family = "piston clearance",
            Summary = "estimate of valve-to-piston clearance on every cylinder from one that was measured",
            Details =
                "A static estimate: pistons, pockets, lift and timing are taken as alike. It is a note for the engine builder, who "
                + "measures every cylinder. Recessions are measured after all cutting of the head; a deck cut given here is one they "
                + "don't hold, as of the block.",
            Parameters =
            [
                Given("measured", "clearance measured on one cylinder"),
                Given("recession", "of that valve when it was measured"),
                new("recessions", new WorkTakes.Amounts(Units.Millimetre, 1), "now, cylinder by cylinder"),
                Optional("deck-cut", "not held in the recessions; without it 0"),
                Optional("gasket-change", "compressed thickness new less old; without it 0"),
                Optional("least", "least clearance allowed; without it no verdict"),
            ],
            Source = "the valve's head moves with its recession, square to the deck",
            Gives =
            [
                .. WorkGives.Of(Dimension.OfLength, "smallest"),
                .. WorkGives.Of(
                    Dimension.OfLength,
                    [
                        .. Enumerable
                            .Range(1, MostCylinders)
                            .Select(one => FormattableString.Invariant($"cylinder {one}")),
                    ]
                ),
                .. WorkGives.Words("verdict"),
            ],
            Examples =
            [
                new(
                    "measured=2.10 mm; recession=0.80 mm; recessions=0.80 0.74 0.86 0.70 mm; deck-cut=0.10 mm; least=1.95 mm",
                    "cylinder 1=2.00 mm; cylinder 2=1.94 mm; cylinder 3=2.06 mm; cylinder 4=1.90 mm; smallest=1.90 mm; verdict=too small",
                    "by hand: 2.10 + 0.70 - 0.80 - 0.10 = 1.90"
                ),
                new(
                    "measured=0.085 in; recession=0.030 in; recessions=0.030 0.034 in; gasket-change=0.002 in; least=0.087 in",
                    "smallest=0.087 in; verdict=enough by this estimate",
                    "by hand; exactly on the limit passes"
                ),
            ],
            Work = all =>
                PistonClearances
                    .Estimate(
                        all.Amount("measured"),
                        all.Amount("recession"),
                        all.Amounts("recessions"),
                        Or0(all, "deck-cut"),
                        Or0(all, "gasket-change")
                    )
                    .Then(clearances => Answer(all, clearances)),
        },
    ];

    private static ShopResult<WorkAnswer> Answer(WorkArguments all, IReadOnlyList<Exact> clearances)
    {
        LengthWorking working = SeatWork.Worked(all);
        Exact smallest = clearances.Aggregate((least, one) => one.CompareTo(least) < 0 ? one : least);
        for (int i = 0; i < clearances.Count; i++)
        {
            Quantity recession = all.Quantities("recessions")[i];
            working.And(
                FormattableString.Invariant($"cylinder {i + 1}"),
                FormattableString.Invariant($"{{measured}} + {recession} - {{recession}}")
                    + Term(all, " - ", "deck-cut")
                    + Term(all, " + ", "gasket-change"),
                clearances[i]
            );
        }

        working.And("smallest", "smallest of these", smallest);
        return all.Has("least")
            ? working
                .Say(
                    "verdict",
                    "{smallest} against {least}",
                    smallest.CompareTo(all.Amount("least")) >= 0 ? "enough by this estimate" : "too small"
                )
                .Done()
            : working.Done();
    }
}
