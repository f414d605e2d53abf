using ProcRunner.Lessons;
using ProcRunner.Quantities;
using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Training;

/// <summary>How a kind of gauge is read, in a sentence; what it shows now isn't known here.</summary>
internal static class GaugeLesson
{
    /// <summary>The sentence.</summary>
    public static string Of(GaugeCharacter gauge)
    {
        Quantity step = gauge.Gauge.Resolution;
        return GaugeFace.KindOf(gauge, null) switch
        {
            FaceKind.Micrometer when step.Unit == Units.Inch =>
                "whole inches (above the sleeve), plus the last number on the sleeve in tenths, plus 0.025 for each line after "
                    + "it, plus the thimble in thousandths: the long line lies on one of its lines or has passed it; count up "
                    + "from the number below. Plus the vernier's line that stands on one of the thimble's, in ten-thousandths.",
            FaceKind.Micrometer =>
                "where its range begins (above the sleeve), plus the last number on the sleeve in whole mm, plus 1 for each line after it above, plus 0.5 if one below comes "
                    + "last, plus the thimble in hundredths: count up from the number below the long line, plus the vernier.",
            FaceKind.Dial =>
                $"whole turns of the small hand times {gauge.Gauge.Turn}, plus the number at the last long mark before the hand, "
                    + $"plus {step} for every mark from there to the hand. Back of 0 all runs to the left and is minus.",
            FaceKind.Ring => "the size of the ring, plus the number at the last long mark before the hand, plus "
                + $"{step} for every mark from there to the hand.",
            FaceKind.Scale =>
                $"the number at the last long mark before the hand, plus {step} for every mark to the hand.",
            FaceKind.Leaves => "the thickest leaf that goes in; 0 where not even the thinnest does.",
            _ => $"the figures as they stand, to the last one; a step is {step}.",
        };
    }
}
