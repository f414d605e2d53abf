using ProcRunner.Practice.Chances;
using ProcRunner.Practice.Heads;

namespace ProcRunner.Practice.Works;

/// <summary>Valves and seats.</summary>
internal static class SeatWork
{
    public static IEnumerable<Work> All { get; } =
    [
        new("new valve", false, NewValve),
        new("reface valve", false, Reface),
        new("touch seat", false, CleanUp, (b, p) => b.Head[Truths.SeatDepth, p]),
        new("cut seat", false, null, null, (b, p, deep) => Deepen(b.Head, p, deep - b.Head[Truths.SeatDepth, p])),
        new("narrow seat", true, Narrow),
        new("clean seat", false, (b, p, _) => Clean(b.Head, p)),
        new("true pilot", false, TruePilot),
        new("fresh edge", false, (b, _, _) => b.Spindle.ChangeEdge()),
    ];

    /// <summary>Wipes the seat and the face.</summary>
    public static void Clean(PracticeHead head, int position)
    {
        head[Truths.Dirt, position] = 0;
        head[Truths.DirtHeight, position] = 0;
    }

    // Another pilot, straight and of the guide's size.
    private static void TruePilot(Bench bench, int position, double to)
    {
        if (position >= 0)
        {
            (bench.Head[Truths.PilotBend, position], bench.Head[Truths.PilotLean, position]) = (0, 0);
        }
    }

    private static void NewValve(Bench bench, int position, double to)
    {
        bench.Head.SetCondition("valve neck", position, "sound");
        bench.Fit("valve", position, bench.ChanceOf("valve", position));
    }

    // The wheel takes off what the face runs out by, and never less than a clean-up; valve and margin lose that over cos.
    private static void Reface(Bench bench, int position, double to)
    {
        Chance chance = bench.ChanceOf("reface valve", position);
        PracticeHead head = bench.Head;
        double angle = bench.Tools["reface angle"] + (bench.Tools["reface angle error"] * chance.Normal());
        double taken = bench.Tools["least reface"] + (head[Truths.FaceRunout, position] / 2);
        double sink = Geometry.Sink(taken, angle);
        head[Truths.FaceTaken, position] = taken;
        head[Truths.ValveDrop, position] += sink;
        head[Truths.Margin, position] -= sink;
        head[Truths.FaceAngle, position] = angle;
        head[Truths.FaceRunout, position] = Math.Abs(bench.Tools["refaced runout"] * chance.Normal());
        double tip = bench.Tools["tip ground"];
        head[Truths.ValveLength, position] -= tip;
        head[Truths.TipToRetainer, position] -= tip;
    }

    // The cutter follows the pilot. Until the seat comes in all round, the cone must go deeper by the offset times the
    // tangent of its angle.
    private static void CleanUp(Bench bench, int position, double to)
    {
        Chance chance = bench.ChanceOf("touch seat", position);
        PracticeHead head = bench.Head;
        Clean(head, position);
        double along = head[Truths.PilotBend, position] + (bench.Tools["pilot centring"] * chance.Normal());
        // One too small for the guide leans under the cutter; the gauge's own pilot doesn't.
        double across = head[Truths.PilotLean, position] + (bench.Tools["pilot centring"] * chance.Normal());
        double offset = Math.Sqrt(
            Math.Pow(head[Truths.OffAlong, position] - along, 2)
                + Math.Pow(head[Truths.OffAcross, position] - across, 2)
        );
        double slope = Math.Tan(head[Truths.SeatAngle, position] * Math.PI / 180);
        Deepen(head, position, (offset * slope) + bench.Tools["seat clean-up"]);
        head[Truths.OffAlong, position] = along;
        if (head.Condition("seat", position) == "burnt")
        {
            head.SetCondition("seat", position, "sound");
        }

        head[Truths.OffAcross, position] = across;
    }

    private static void Deepen(PracticeHead head, int position, double by)
    {
        if (by <= 0)
        {
            return;
        }

        head[Truths.SeatDepth, position] += by;
        head[Truths.SeatOutside, position] += Geometry.Widening(by, head[Truths.SeatAngle, position]);
    }

    // The flat cutter lowers the outside to where the band is to end, the steep one raises the inside from there.
    private static void Narrow(Bench bench, int position, double width)
    {
        Chance chance = bench.ChanceOf("narrow seat", position);
        PracticeHead head = bench.Head;
        double angle = head[Truths.SeatAngle, position];
        bool intake = bench.Spec.Positions[position].Kind.StartsWith('I');
        double middle =
            ((head[Truths.FaceOutside, position] + head[Truths.FaceInside, position]) / 2)
            + (intake ? bench.Tools["contact shift of intakes"] : 0);
        double half = (Geometry.OutsideFor(width, 0, angle) / 2) + (bench.Tools["narrowing"] * chance.Normal());
        double outside = Math.Min(head[Truths.SeatOutside, position], middle + half);
        double inside = Math.Max(head[Truths.SeatInside, position], outside - (2 * half));
        (head[Truths.SeatOutside, position], head[Truths.SeatInside, position]) = (outside, inside);
    }
}
