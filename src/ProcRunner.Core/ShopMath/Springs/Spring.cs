using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>A valve spring as a straight line of load against height; all exact.</summary>
/// <remarks>
/// The folder: this is the spring in the head, <see cref="ShimChoice"/> what brings it to its height, <see cref="WireSpring"/> the
/// spring from its wire, <see cref="NestedSprings"/> several under one retainer. The line holds between free length and solid height.
/// </remarks>
public static class Spring
{
    /// <summary>Rate from two loads, by Hooke's law: (load2 - load1) / (height1 - height2). Equal heights, or a load that doesn't rise as height falls, are faults.</summary>
    /// <param name="load1">At <paramref name="height1"/>.</param>
    /// <param name="height1">Above 0.</param>
    /// <param name="load2">At <paramref name="height2"/>; the two may stand in either order.</param>
    /// <param name="height2">Above 0.</param>
    public static ShopResult<Exact> Rate(Exact load1, Exact height1, Exact load2, Exact height2)
    {
        if ((Allowed.Above0("height1", height1) ?? Allowed.Above0("height2", height2)) is { } fault)
        {
            return fault;
        }

        if (height1 == height2)
        {
            return new ShopFault(
                "height2",
                Allowed.Show(height2),
                "both heights are equal, so the rate divides by zero"
            );
        }

        Exact rate = (load2 - load1) / (height1 - height2);
        return rate.Value.Sign > 0
            ? rate
            : new ShopFault("load2", Allowed.Show(load2), "the load must rise as the height falls");
    }

    /// <summary>Load at a height, by Hooke's law: load + rate x (height - at). A height past the free length, where the load would be below 0, is a fault.</summary>
    /// <param name="load">Known load.</param>
    /// <param name="height">Its height.</param>
    /// <param name="rate">Above 0.</param>
    /// <param name="at">The height asked about, above 0.</param>
    public static ShopResult<Exact> LoadAt(Exact load, Exact height, Exact rate, Exact at)
    {
        if ((Allowed.Above0("rate", rate) ?? Allowed.Above0("at", at)) is { } fault)
        {
            return fault;
        }

        Exact found = load + (rate * (height - at));
        return found.Value.Sign >= 0
            ? found
            : new ShopFault(
                "at",
                Allowed.Show(at),
                "the spring is loose there: its free length is " + FreeText(load, height, rate)
            );
    }

    /// <summary>Height for a load, by Hooke's law: height - (wanted - load) / rate.</summary>
    /// <param name="load">Known load.</param>
    /// <param name="height">Its height.</param>
    /// <param name="rate">Above 0.</param>
    /// <param name="wanted">Not below 0. A load that would need a height of 0 or less is a fault.</param>
    public static ShopResult<Exact> HeightFor(Exact load, Exact height, Exact rate, Exact wanted)
    {
        if ((Allowed.Above0("rate", rate) ?? Allowed.NotBelow0("wanted", wanted)) is { } fault)
        {
            return fault;
        }

        Exact found = height - ((wanted - load) / rate);
        return found.Value.Sign > 0
            ? found
            : new ShopFault("wanted", Allowed.Show(wanted), "the spring would be pressed to no height at all");
    }

    /// <summary>Shim that brings a spring to its height: measured - wanted (geometry); below 0 no shim helps.</summary>
    /// <param name="measured">Installed height without the shim.</param>
    /// <param name="wanted">Installed height wanted.</param>
    public static Exact ShimFor(Exact measured, Exact wanted) => measured - wanted;

    /// <summary>How far a reading is off its spec, as a part of the spec: (reading - spec) / spec.</summary>
    /// <param name="reading">Of the spec's dimension.</param>
    /// <param name="spec">Not 0.</param>
    public static ShopResult<Exact> PartOff(Exact reading, Exact spec) =>
        spec.Value.IsZero
            ? new ShopFault("spec", Allowed.Show(spec), "it must not be 0, for it divides by zero")
            : (reading - spec) / spec;

    /// <summary>What is left to solid at full lift: height - lift - solid; not above 0, the spring binds.</summary>
    /// <param name="height">Installed height, valve closed, above 0.</param>
    /// <param name="lift">Full lift, not below 0.</param>
    /// <param name="solid">Solid height, above 0.</param>
    public static ShopResult<Exact> CoilBindMargin(Exact height, Exact lift, Exact solid) =>
        (Allowed.Above0("height", height) ?? Allowed.NotBelow0("lift", lift) ?? Allowed.Above0("solid", solid))
            is { } fault
            ? fault
            : height - lift - solid;

    /// <summary>The most shim that leaves a margin to coil bind: height - lift - solid - margin; below 0 there is no room as it is.</summary>
    /// <param name="height">Installed height without the shim, above 0.</param>
    /// <param name="lift">Full lift, not below 0.</param>
    /// <param name="solid">Solid height, above 0.</param>
    /// <param name="margin">Wanted at full lift, not below 0.</param>
    public static ShopResult<Exact> MostShim(Exact height, Exact lift, Exact solid, Exact margin) =>
        Allowed.NotBelow0("margin", margin) is { } fault
            ? fault
            : CoilBindMargin(height, lift, solid).Then<Exact>(left => left - margin);

    /// <summary>What is left between retainer and seal at full lift: gap - lift; not above 0, they touch.</summary>
    /// <param name="gap">Valve closed, not below 0. A shim under the seal takes from it.</param>
    /// <param name="lift">Full lift, not below 0.</param>
    public static ShopResult<Exact> RetainerToSeal(Exact gap, Exact lift) =>
        (Allowed.NotBelow0("gap", gap) ?? Allowed.NotBelow0("lift", lift)) is { } fault ? fault : gap - lift;

    private static string FreeText(Exact load, Exact height, Exact rate) => Allowed.Show(height + (load / rate));
}
