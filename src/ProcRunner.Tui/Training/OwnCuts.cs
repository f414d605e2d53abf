using ProcRunner.Procedures;
using ProcRunner.Runs;

namespace ProcRunner.Tui.Training;

/// <summary>What a learner's own passes came to: what lay too deep before isn't theirs.</summary>
internal static class OwnCuts
{
    /// <summary>Readings of a cut past its high limit, each the first after the learner's own pass there.</summary>
    /// <param name="plan">What is worked to.</param>
    /// <param name="events">The learner's, in order.</param>
    public static IEnumerable<RunEvent.ReadingTaken> TooDeep(Plan plan, IReadOnlyList<RunEvent> events)
    {
        HashSet<At> cut = [];
        foreach (RunEvent happened in events)
        {
            if (happened is RunEvent.PassCut pass)
            {
                cut.Add(pass.At);
            }
            else if (happened is RunEvent.ReadingTaken taken && cut.Remove(taken.At) && IsPast(plan, taken))
            {
                yield return taken;
            }
        }
    }

    private static bool IsPast(Plan plan, RunEvent.ReadingTaken taken) =>
        plan.Steps[taken.At.Step].Work is StepWork.Cut
        && taken.Reading.Judgement is { Verdict: Verdict.Out, High: { } high }
        && taken.Reading.Value.CompareTo(high) > 0;
}
