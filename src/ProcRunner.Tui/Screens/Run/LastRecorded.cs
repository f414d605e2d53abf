using System.Globalization;
using ProcRunner.Runs;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>The last entry of a job in words: what the screen shows first after a start.</summary>
internal static class LastRecorded
{
    /// <summary>The words; empty before any entry.</summary>
    public static string Of(RunState state)
    {
        string entry = string.Create(CultureInfo.InvariantCulture, $", entry {state.Sequence}");
        if (state.Notes.Count > 0 && state.Notes[^1].Sequence == state.Sequence)
        {
            return $"the note \"{state.Notes[^1].Note.Text}\"{entry}";
        }

        return state.LastAt is { } at && state.Find(at) is { } record
                ? $"{state.Plan.NameOf(at)}: {Result(record)}{entry}"
            : state.Worker.Length > 0 ? $"handed over to {state.Worker}{entry}"
            : $"the job was opened{entry}";
    }

    private static string Result(StepRecord record)
    {
        if (record is { Cut: { } cut, Standing: StepStanding.InHand } && cut.Travel != cut.TravelAtReading)
        {
            return $"readout {cut.Readout}";
        }

        return record switch
        {
            { Question: { } question } => $"\"{question.Typed}\" was questioned",
            { Standing: StepStanding.Out, Readings.Count: > 0 } => $"{record.Readings[^1].Value}, out of spec",
            { Said.Length: > 0 } => record.Said,
            { Readings.Count: > 0 } => record.Readings[^1].Value.ToString(),
            { Standing: StepStanding.Done } => "done",
            _ => "begun",
        };
    }
}
