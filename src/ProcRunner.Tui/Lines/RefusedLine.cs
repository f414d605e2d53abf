using System.Globalization;
using ProcRunner.Runs;

namespace ProcRunner.Tui.Lines;

/// <summary>
/// The line at which a run is held up: its value is out of spec, questioned or not deep enough yet. That is the line to
/// look at, not the one that came next and didn't answer it.
/// </summary>
internal sealed class RefusedLine
{
    private (At At, int Line, string What)? _last;

    /// <summary>Takes note of what came of a line.</summary>
    public void Remember(RunState state, IReadOnlyList<RunEvent> events, int line)
    {
        foreach (RunEvent happened in events)
        {
            (At At, string What)? held = happened switch
            {
                RunEvent.EntryQuestioned e => (e.At, $"\"{e.Typed}\" was questioned: {e.Why}"),
                RunEvent.ReadingTaken { Reading.Good: false } e => (e.At, string.Join("; ", e.Reading.Faults)),
                RunEvent.ReadingTaken { Reading.Judgement.Verdict: Verdict.Short } e => (
                    e.At,
                    $"{e.Reading.Characteristic} {e.Reading.Value} is not deep enough yet: {LineWording.Window(e.Reading.Judgement)}."
                ),
                RunEvent.FindingNoted { Good: false } e => (
                    e.At,
                    $"{state.Plan.Steps[e.At.Step].Name} was found {e.Finding}."
                ),
                _ => null,
            };
            if (held is { } some)
            {
                _last = (some.At, line, some.What);
            }
        }
    }

    /// <summary>Where and why a piped run stopped.</summary>
    /// <param name="state">The run.</param>
    /// <param name="line">The line that was refused, or one past the end of the input.</param>
    /// <param name="why">Why it was.</param>
    public string Stopped(RunState state, int line, string why)
    {
        string here = Number(line);
        return _last is { } held && held.Line != line && IsHeldUp(state, held.At)
            ? $"Stopped at line {Number(held.Line)}: {state.Plan.NameOf(held.At)}: {held.What} Line {here} doesn't answer it: {why}"
            : $"Stopped at line {here}: {why}";
    }

    private static bool IsHeldUp(RunState state, At at) =>
        state.StandingOf(at) is StepStanding.Out or StepStanding.InHand || state.Find(at)?.Question is not null;

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
