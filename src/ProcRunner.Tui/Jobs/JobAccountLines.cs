using System.Globalization;
using ProcRunner.Records;
using ProcRunner.Records.Story;
using ProcRunner.Runs;
using ProcRunner.Shop;
using ProcRunner.Tui.Lines;

namespace ProcRunner.Tui.Jobs;

/// <summary>A job as lines for a person.</summary>
internal static class JobAccountLines
{
    /// <summary>The lines.</summary>
    public static IEnumerable<string> Of(JobAccount account) =>
        [.. Heading(account), .. Values(account), .. Lists(account), .. Ahead(account)];

    private static IEnumerable<string> Heading(JobAccount account)
    {
        RunState state = account.State;
        JobHeader job = state.Job!;
        yield return $"Job {job.Stamp}: {state.Plan.Head.Title}";
        yield return $"Procedure: {state.Plan.Procedure.Title}, revision {Number(state.Plan.Procedure.Revision)}";
        if (job.Practice)
        {
            yield return "PRACTICE: worth nothing to a customer.";
        }

        foreach (
            (string what, string text) in new[]
            {
                ("Customer", job.Customer),
                ("Complaint", job.Complaint),
                ("Earlier work", job.EarlierWork),
            }
        )
        {
            if (text.Length > 0)
            {
                yield return $"{what}: {text}";
            }
        }

        string standing = JobProjection.StandingWord(state.Standing);
        yield return $"State: {standing}; waiting for {JobProjection.WaitingFor(state)}";
        if (account.Record.Proof.Code is { } code)
        {
            yield return $"Proof code: {code}";
        }

        foreach (ShopRoot root in account.Roots.Skip(1))
        {
            yield return BeganAnew(root);
        }

        yield return $"Opened {JobListing.Minute(account.Record.Opened.At)} UTC, last entry no. {Number(state.Sequence)} of {JobListing.Minute(account.Record.Last.At)} UTC";
    }

    private static IEnumerable<string> Values(JobAccount account)
    {
        foreach (IGrouping<string, FinalValue> position in account.Record.Values.GroupBy(v => v.Position))
        {
            yield return "";
            yield return $"== {position.Key} ==";
            int wide = position.Max(v => v.Name.Length);
            foreach (FinalValue value in position)
            {
                yield return $"{value.Name.PadRight(wide)}  {value.Record.Value, -11} {Judged(value)}";
            }
        }
    }

    private static string Judged(FinalValue value)
    {
        Judgement judgement = value.Record.Judgement;
        List<string> parts = [];
        if (judgement.Origin.Length > 0)
        {
            parts.Add(LineWording.Window(judgement));
        }

        parts.Add(value.Verdict);
        parts.Add($"by {value.Step}");
        parts.Add(
            value.WorkedOut ? "worked out"
            : value.Gauge.Length > 0 ? $"gauge {value.Gauge}"
            : "no gauge kept"
        );
        if (value.Record.AsFound is { } found && !found.SameAs(value.Record.Value))
        {
            parts.Add($"as found {found}");
        }

        return string.Join("; ", parts);
    }

    private static IEnumerable<string> Lists(JobAccount account)
    {
        BuildRecord record = account.Record;
        return
        [
            .. Section(
                "Parts",
                record.Parts.Where(p => p.IsInPlace).Select(p => $"{p.Position}: {p.Part} {p.Number}, lot {p.Lot}")
            ),
            .. Section("Decisions", record.Decisions.Select(d => $"{d.About}, {d.Position}: {d.Text}")),
            .. Section("Sign-offs", record.Marks.Select(Mark)),
            .. Section("Corrections", account.State.Corrections.Select(c => Corrected(account.State, c))),
            .. Section("Notes", record.Notes.Select(Note)),
            .. Section("Clock", record.Clock),
        ];
    }

    private static string Corrected(RunState state, CorrectedEntry correction) =>
        $"{CorrectionWords.Of(state, correction)} (entry {Number(correction.Sequence)})";

    private static string BeganAnew(ShopRoot root) =>
        $"The shop began anew on {JobListing.Minute(root.At)} UTC with {root.Lead.Name} as its first lead, not vouched for by the one before: {root.Reason}";

    private static IEnumerable<string> Ahead(JobAccount account) =>
        account.IsClosed
            ? []
            :
            [
                .. Section("Open now", account.Open.Select(account.State.Plan.NameOf)),
                .. Section(
                    "Recheck",
                    account.Rechecks.Select(at => $"{account.State.Plan.NameOf(at)}{Cause(account.State, at)}")
                ),
            ];

    private static string Cause(RunState state, At at)
    {
        string cause = state.Find(at) is { Stale: true } record
            ? record.Cause
            : state
                .Plan.Steps[at.Step]
                .Gives.Select(name => state.Value(name, at.Position))
                .FirstOrDefault(v => v is { Stale: true })
                ?.Cause
                ?? "";
        return cause.Length > 0 ? $": {cause}" : "";
    }

    private static string Mark(MarkTold told)
    {
        JobMark mark = told.Mark;
        string beside = mark.Beside is { } lead ? $", {lead.Name} beside" : "";
        string reason = mark.Reason.Length > 0 ? $": {mark.Reason}" : "";
        return $"{mark.Meaning} by {mark.Mark.Name}{beside}, {JobListing.Minute(mark.Mark.At)} UTC, {told.Step}{reason} (entry {Number(told.By.Entry)})";
    }

    private static string Note(Said note)
    {
        string where =
            note.About.Length == 0 ? ""
            : note.Position == "head" ? $", {note.About}"
            : $", {note.About} at {note.Position}";
        return $"{JobListing.Minute(note.By.At)} UTC, {note.By.Id}{where}: {note.Text}";
    }

    private static IEnumerable<string> Section(string title, IEnumerable<string> lines)
    {
        bool first = true;
        foreach (string line in lines)
        {
            if (first)
            {
                yield return "";
                yield return $"== {title} ==";
                first = false;
            }

            yield return line;
        }
    }

    private static string Number(long value) => value.ToString(CultureInfo.InvariantCulture);
}
