using ProcRunner.Records.Data;
using ProcRunner.Records.Story;
using ProcRunner.Runs;
using ProcRunner.Trail;

namespace ProcRunner.Tui.Jobs;

/// <summary>A job for scripts. An amount is a map of its number as a text, <c>v</c>, and its unit, <c>u</c>.</summary>
internal static class JobAccountJson
{
    /// <summary>The job.</summary>
    public static Json.Map Of(JobAccount account)
    {
        RunState state = account.State;
        JobHeader job = state.Job!;
        return Json.MapOf(
            ("stamp", Text(job.Stamp)),
            ("job", Text(state.JobId)),
            ("customer", Text(job.Customer)),
            ("complaint", Text(job.Complaint)),
            ("earlier-work", Text(job.EarlierWork)),
            ("practice", new Json.Flag(job.Practice)),
            ("procedure", Pinned(state.Plan.Procedure.Name, state.Plan.Procedure.Revision, job.ProcedureDigest)),
            ("head", Pinned(state.Plan.Head.Name, state.Plan.Head.Revision, job.HeadDigest)),
            ("state", Text(JobProjection.StandingWord(state.Standing))),
            ("waiting-for", Text(JobProjection.WaitingFor(state))),
            ("opened", Text(JobListing.Second(account.Record.Opened.At))),
            ("since", Text(JobListing.Second(account.Record.Last.At))),
            ("entries", new Json.Whole(account.Record.Last.Entry)),
            ("proof", account.Record.Proof.Code is { } code ? Text(code.ToString()) : Json.Nothing),
            ("values", List(account.Record.Values.Select(RecordJson.Value))),
            ("parts", List(account.Record.Parts.Where(p => p.IsInPlace).Select(RecordJson.Part))),
            (
                "decisions",
                List(
                    account.Record.Decisions.Select(d =>
                        Json.MapOf(("about", Text(d.About)), ("at", Text(d.Position)), ("choice", Text(d.Text)))
                    )
                )
            ),
            ("marks", List(account.Record.Marks.Select(RecordJson.Mark))),
            ("corrections", List(state.Corrections.Select(c => Corrected(state, c)))),
            ("notes", List(account.Record.Notes.Select(Note))),
            ("open", List(account.IsClosed ? [] : account.Open.Select(at => Text(state.Plan.NameOf(at))))),
            ("recheck", List(account.Rechecks.Select(at => Text(state.Plan.NameOf(at)))))
        );
    }

    private static Json.Map Pinned(string name, int revision, string digest) =>
        Json.MapOf(("name", Text(name)), ("revision", new Json.Whole(revision)), ("sha256", Text(digest)));

    private static Json.Map Corrected(RunState state, CorrectedEntry correction) =>
        Json.MapOf(
            ("step", Text(state.Plan.NameOf(correction.At))),
            ("was", Text(correction.Was)),
            ("became", Text(correction.Became)),
            ("reason", Text(correction.Reason)),
            ("entry", new Json.Whole(correction.Sequence))
        );

    private static Json.Map Note(Said note) =>
        Json.MapOf(
            ("text", Text(note.Text)),
            ("step", note.About.Length > 0 ? Text(Place(note)) : Json.Nothing),
            ("by", Text(note.By.Id)),
            ("entry", new Json.Whole(note.By.Entry))
        );

    private static string Place(Said note) => note.Position == "head" ? note.About : $"{note.About} at {note.Position}";

    private static Json.Text Text(string text) => new Json.Text(text);

    private static Json.List List(IEnumerable<Json> items) => Json.ListOf([.. items]);
}
