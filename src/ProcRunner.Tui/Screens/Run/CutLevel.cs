using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Shop;
using ProcRunner.ShopMath;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>The depths of a cut in the order the tool meets them, each as the readout shows it.</summary>
/// <param name="Name">zero, now, low, stop, aim, high.</param>
/// <param name="Travel">From the zero, in the readout's unit.</param>
/// <param name="Shows">What the readout shows there.</param>
internal sealed record CutLevel(string Name, Rational Travel, Quantity Shows)
{
    /// <summary>The levels of the cut in hand; empty when it has no zero or no limits yet.</summary>
    /// <param name="work">The run.</param>
    /// <param name="prompt">The cut.</param>
    /// <param name="shows">What the readout shows now; null: what it showed last.</param>
    public static IReadOnlyList<CutLevel> Of(RunWork work, Prompt prompt, Quantity? shows = null)
    {
        if (prompt.Progress is not { } progress || work.Job.Shop.Readout is not { } readout)
        {
            return [];
        }

        ReadoutMaths maths = new(readout, work.Plan.PositionOf(prompt.At.Position)?.GuideAngle ?? 0);
        Rational last = Rational.FromDecimal(progress.Travel.Value);
        Rational now = shows is { } stands
            ? (readout.StepMode ? last : Rational.Zero)
                + maths.TravelAt(readout.StepMode ? new Quantity(0, readout.Unit) : progress.Zero.Set, stands)
            : last;
        List<CutLevel> levels =
        [
            new("zero", Rational.Zero, progress.Zero.Set),
            new("now", now, shows ?? progress.Readout),
        ];
        Add(levels, "low", prompt.Window.Low, progress, maths);
        if (prompt.Target is { StopsShort: true } target)
        {
            levels.Add(new("stop", last + Rational.FromDecimal(target.Left.Value), target.Show));
        }

        Add(levels, "aim", prompt.Window.Aim, progress, maths);
        Add(levels, "high", prompt.Window.High, progress, maths);
        return [.. levels.OrderBy(l => l.Travel)];
    }

    private static void Add(List<CutLevel> levels, string name, Quantity? end, CutProgress progress, ReadoutMaths maths)
    {
        if (end is not { } limit || limit.Dimension != maths.Readout.Unit.Dimension)
        {
            return;
        }

        Rational travel =
            Rational.FromDecimal(progress.TravelAtReading.Value)
            + maths.TravelFor(Exact.Of(progress.Reading), Exact.Of(limit));
        Readout readout = maths.Readout;
        Quantity from = readout.StepMode ? new Quantity(0, readout.Unit) : progress.Zero.Set;
        Rational counted = readout.StepMode ? travel - Rational.FromDecimal(progress.Travel.Value) : travel;
        levels.Add(new CutLevel(name, travel, maths.NumberAt(from, counted)));
    }
}
