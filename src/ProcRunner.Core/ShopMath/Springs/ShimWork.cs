using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The calculator's choice of shims.</summary>
internal static class ShimWork
{
    private const int MostShown = 10;
    private static readonly WorkTakes Length = new WorkTakes.Amount(Units.Inch);

    public static WorkFunction Function { get; } =
        new()
        {
            Name = "spring-shims",
            Family = SpringWork.Family,
            Summary = "shims from the drawer that bring a spring to its height",
            Details =
                "Each thickness counts as often as needed. Shims restore height; a spring under its load limit is replaced. Check "
                + "coil bind and retainer to seal after.",
            Parameters =
            [
                new("measured", Length, "installed height without shims"),
                new("wanted", Length, "installed height wanted"),
                new("tolerance", Length, "allowed either way"),
                new("drawer", new WorkTakes.Amounts(Units.Inch, 1), "thicknesses there are"),
                new("stack-limit", Length, "the most shim under one spring"),
            ],
            Source = "every stack within the limit is tried",
            Gives =
            [
                .. WorkGives.Of(Dimension.OfLength, "needed"),
                .. WorkGives.Words("shims"),
                .. WorkGives.Of(Dimension.OfLength, "height"),
                .. WorkGives.Words("others that fit"),
            ],
            Examples =
            [
                new(
                    "measured=1.762 in; wanted=1.700 in; tolerance=0.005 in; drawer=0.015 0.030 0.060 in; stack-limit=0.060 in",
                    "shims=0.060 in; height=1.702 in",
                    "thicknesses and limit as sold; worked by hand"
                ),
                new(
                    "measured=1.745 in; wanted=1.700 in; tolerance=0.005 in; drawer=0.015 0.030 0.060 in; stack-limit=0.060 in",
                    "shims=0.030 in + 0.015 in; height=1.700 in",
                    "worked by hand"
                ),
            ],
            Work = Work,
        };

    private static ShopResult<WorkAnswer> Work(WorkArguments all) =>
        ShimChoice
            .Find(
                all.Amount("measured"),
                all.Amount("wanted"),
                all.Amount("tolerance"),
                all.Amounts("drawer"),
                all.Amount("stack-limit")
            )
            .Then(choice =>
            {
                Working working = new(all);
                Exact need = Spring.ShimFor(all.Amount("measured"), all.Amount("wanted"));
                working.Step("needed", "{measured} - {wanted}", need, Units.Millimetre, Units.Inch);
                if (choice.Best is not { } best)
                {
                    working.Say("shims", "stacks of {drawer} up to {stack-limit}", "none: " + choice.Why);
                    return working.Done();
                }

                working.Say("shims", "the stack of {drawer} up to {stack-limit} nearest to {needed}", Words(best, all));
                working.Step("height", "{measured} - {shims}", best.Height, Units.Millimetre, Units.Inch);
                IEnumerable<string> others = choice.All.Skip(1).Take(MostShown).Select(stack => Words(stack, all));
                string more = choice.All.Count > MostShown + 1 ? " or ..." : "";
                working.Say(
                    "others that fit",
                    "other stacks that leave {wanted} within {tolerance}",
                    choice.All.Count > 1 ? string.Join(" or ", others) + more : "none"
                );
                return working.Done();
            });

    private static Unit UnitOf(WorkArguments all) => all.IsInch ? Units.Inch : Units.Millimetre;

    private static string Words(ShimPack stack, WorkArguments all) =>
        stack.Shims.Count == 0
            ? "no shim"
            : string.Join(
                " + ",
                stack.Shims.Select(one =>
                    WorkFigure.Of("", one, UnitOf(all), all.PlacesIn(UnitOf(all)))?.Text ?? Allowed.Show(one)
                )
            );
}
