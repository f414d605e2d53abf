using System.Globalization;
using ProcRunner.Runs;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>The last entry of a job in words: what the screen shows first after a start.</summary>
internal static class LastRecorded
{
    /// <summary>The words; empty before any entry.</summary>
    /// <param name="state">The run.</param>
    /// <param name="nameOf">A person's name by id.</param>
    public static string Of(RunState state, Func<string, string> nameOf)
    {
        string entry = Entry(state.Sequence);
        if (state.Notes.Count > 0 && state.Notes[^1].Sequence == state.Sequence)
        {
            return $"the note \"{state.Notes[^1].Note.Text}\"{entry}";
        }

        return state.LastAt is { } at && state.Find(at) is { } record
                ? $"{state.Plan.NameOf(at)}: {Result(record)}{(record.Question is null ? Entry(record.Sequence) : entry)}"
            : state.Worker.Length > 0 ? $"handed over to {nameOf(state.Worker)}{entry}"
            : $"the job was opened{entry}";
    }

    private static string Entry(long sequence) => string.Create(CultureInfo.InvariantCulture, $", entry {sequence}");

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
