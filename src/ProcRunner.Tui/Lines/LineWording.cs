using System.Globalization;
using ProcRunner.Quantities;
using ProcRunner.Runs;

namespace ProcRunner.Tui.Lines;

/// <summary>Events and limits in words.</summary>
internal static class LineWording
{
    /// <summary>A window in words: <c>low 0.0490 in, aim 0.0550 in, high 0.0610 in (maker)</c>.</summary>
    public static string Window(Judgement window)
    {
        List<string> ends = [];
        if (window.Low is { } low)
        {
            ends.Add($"low {low}");
        }

        if (window.Aim is { } aim)
        {
            ends.Add($"aim {aim}");
        }

        if (window.High is { } high)
        {
            ends.Add($"high {high}");
        }

        return $"{string.Join(", ", ends)} ({window.Origin})";
    }

    /// <summary>A number, how it is worked out, and what comes of it: each said once.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="working">The formula with its numbers, and after an equals sign what comes of it.</param>
    /// <param name="value">What comes of it; null where that isn't known yet.</param>
    public static string Worked(string name, string working, Quantity? value)
    {
        if (value is not { } known)
        {
            return $"{name}: {working} = not known yet";
        }

        string figure = known.Value.ToString(CultureInfo.InvariantCulture);
        string formula = working.EndsWith($" = {figure}", StringComparison.Ordinal)
            ? working[..^(figure.Length + 3)]
            : working;
        return formula == figure || formula == known.ToString() ? $"{name}: {known}" : $"{name}: {formula} = {known}";
    }

    /// <summary>An event in words; empty for one that needs none.</summary>
    public static string Of(RunState state, RunEvent happened) =>
        happened switch
        {
            RunEvent.ReadingTaken e => Reading(e.Reading),
            RunEvent.EntryQuestioned e => $"not taken: {e.Why}",
            RunEvent.FindingNoted e => $"{e.Finding}{(e.Good ? "" : ": out of spec")}",
            RunEvent.ChoiceMade e => $"decided {state.Plan.NameOf(e.At)}: {e.Choice}",
            RunEvent.StepDone => "done",
            RunEvent.PartFitted e => $"fitted {e.Part} {e.Number}, lot {e.Lot}",
            RunEvent.ZeroSet e => $"zero set: readout {e.Zero.Set}, measured {e.Zero.Measured}",
            RunEvent.PassCut e => $"readout {e.Progress.Readout}{(e.Progress.Measures ? ": lift, wipe, measure" : "")}",
            RunEvent.WentStale e => $"recheck ({e.Cause}): {Items(state, e)}",
            RunEvent.Reopened e => $"over again ({e.Cause}): {string.Join(", ", e.Items.Select(state.Plan.NameOf))}",
            RunEvent.WayTaken e => $"way on: {e.Way}",
            RunEvent.Conceded e => $"conceded by {e.Mark.Name}: {e.Reason}",
            RunEvent.HeadScrapped e => $"head scrapped by {e.Mark.Name}: {e.Reason}",
            RunEvent.SignedOff e => $"signed ({e.Meaning}) by {e.Mark.Name}{Beside(e.Beside)}",
            RunEvent.JobReleased e => $"RELEASED by {e.Mark.Name}{Beside(e.Beside)}",
            _ => OfJob(happened),
        };

    private static string OfJob(RunEvent happened) =>
        happened switch
        {
            RunEvent.CutterLifted => "lifted",
            RunEvent.CutEnded => "cut ended within its window",
            RunEvent.EntryCorrected e => $"corrected: {e.Reason}",
            RunEvent.LeftOut e => $"left out: {e.Reason}",
            RunEvent.LeavingOutTakenBack e => $"not left out after all: {e.Reason}",
            RunEvent.Noted => "noted",
            RunEvent.JobHeld => "on hold",
            RunEvent.JobTakenUp => "taken up",
            RunEvent.HandedOver e => $"handed over to {e.To}",
            RunEvent.GaugeChosen e => $"gauge for {e.Kind}: {e.Gauge}",
            RunEvent.LimitChosen e => $"limit of {e.Characteristic} chosen: {e.Reason}",
            RunEvent.ChangeReported e => $"reported: {e.Change} changed",
            RunEvent.CameBack e => $"came back: the earlier job is {e.Stamp}",
            RunEvent.HeadLinked e => $"{e.Stamp} is another head of this engine",
            RunEvent.HeadsCompared { Together: true } e => $"compared with {e.Stamp}: they match, released together",
            RunEvent.HeadsCompared e => $"compared with {e.Stamp}: released apart: {e.Reason}",
            _ => "",
        };

    private static string Reading(TakenReading reading)
    {
        string verdict = reading.Judgement.Verdict switch
        {
            Verdict.In => "in limits",
            Verdict.Out => "OUT OF SPEC",
            Verdict.Short => "not deep enough yet",
            _ => "recorded",
        };
        string predicted = reading.Predicted is { } expected
            ? $"; predicted {expected}{(reading.Disagrees ? ": THEY DISAGREE, touch off again" : "")}"
            : "";
        string worked = string.Concat(
            reading.Worked.Select(w =>
                $"; {w.Name} {Shown(w)}{(w.Judgement.Verdict == Verdict.Out ? " OUT OF SPEC" : "")}"
            )
        );
        return $"{reading.Characteristic} {reading.Value}: {verdict}{predicted}{worked}";
    }

    // Where nothing is held against it, the figures that its unit is read to are enough.
    private static Quantity Shown(WorkedValue worked)
    {
        (Quantity value, int usual) = (worked.Value, Show.DigitsOf(worked.Value.Unit));
        return
            worked.Judgement is { Low: null, High: null }
            && value.Value.Scale > usual
            && value.TryConvert(value.Unit, usual, Rounding.Nearest, out Quantity rounded)
            ? rounded
            : value;
    }

    private static string Items(RunState state, RunEvent.WentStale stale)
    {
        IEnumerable<string> names = stale
            .Items.Select(i =>
                i.Characteristic >= 0
                    ? state.Plan.Procedure.Characteristics[i.Characteristic].Name
                    : state.Plan.Steps[i.Step].Name
            )
            .Distinct();
        return string.Join(", ", names);
    }

    private static string Beside(Mark? beside) => beside is null ? "" : $", {beside.Name} beside";
}
