using System.Globalization;
using ProcRunner.Quantities;
using ProcRunner.Records;
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
            ("values", List(account.Record.Values.Select(Value))),
            ("parts", List(account.Record.Parts.Where(p => p.IsInPlace).Select(Part))),
            (
                "decisions",
                List(
                    account.Record.Decisions.Select(d =>
                        Json.MapOf(("about", Text(d.About)), ("at", Text(d.Position)), ("choice", Text(d.Text)))
                    )
                )
            ),
            ("marks", List(account.Record.Marks.Select(Mark))),
            ("notes", List(account.Record.Notes.Select(Note))),
            ("open", List(account.IsClosed ? [] : account.Open.Select(at => Text(state.Plan.NameOf(at))))),
            ("recheck", List(account.Rechecks.Select(at => Text(state.Plan.NameOf(at)))))
        );
    }

    private static Json.Map Value(FinalValue value)
    {
        Judgement judgement = value.Record.Judgement;
        return Json.MapOf(
            ("name", Text(value.Name)),
            ("at", Text(value.Position)),
            ("value", Amount(value.Record.Value)),
            (
                "places",
                List(value.Record.Places.Select(p => Json.MapOf(("place", Text(p.Place)), ("value", Amount(p.Value)))))
            ),
            ("low", Amount(judgement.Low)),
            ("aim", Amount(judgement.Aim)),
            ("high", Amount(judgement.High)),
            ("origin", Text(judgement.Origin)),
            ("verdict", Text(value.Verdict)),
            ("stale", new Json.Flag(value.Record.Stale)),
            ("step", Text(value.Step)),
            ("gauge", Text(value.Gauge)),
            ("worked-out", new Json.Flag(value.WorkedOut)),
            ("as-found", Amount(value.Record.AsFound)),
            ("entry", new Json.Whole(value.Record.Sequence))
        );
    }

    private static Json.Map Pinned(string name, int revision, string digest) =>
        Json.MapOf(("name", Text(name)), ("revision", new Json.Whole(revision)), ("sha256", Text(digest)));

    private static Json.Map Part(PartTold part) =>
        Json.MapOf(
            ("part", Text(part.Part)),
            ("at", Text(part.Position)),
            ("number", Text(part.Number)),
            ("lot", Text(part.Lot))
        );

    private static Json.Map Mark(MarkTold told) =>
        Json.MapOf(
            ("meaning", Text(told.Mark.Meaning)),
            ("step", Text(told.Step)),
            ("person", Text(told.Mark.Mark.Person)),
            ("name", Text(told.Mark.Mark.Name)),
            ("time", Text(JobListing.Second(told.Mark.Mark.At))),
            ("beside", told.Mark.Beside is { } lead ? Text(lead.Name) : Json.Nothing),
            ("reason", Text(told.Mark.Reason)),
            ("entry", new Json.Whole(told.By.Entry))
        );

    private static Json.Map Note(Said note) =>
        Json.MapOf(
            ("text", Text(note.Text)),
            ("step", note.About.Length > 0 ? Text(Place(note)) : Json.Nothing),
            ("by", Text(note.By.Id)),
            ("entry", new Json.Whole(note.By.Entry))
        );

    private static string Place(Said note) => note.Position == "head" ? note.About : $"{note.About} at {note.Position}";

    private static Json Amount(Quantity? amount) =>
        amount is { } some
            ? Json.MapOf(("v", Text(some.Value.ToString(CultureInfo.InvariantCulture))), ("u", Text(some.Unit.Symbol)))
            : Json.Nothing;

    private static Json.Text Text(string text) => new Json.Text(text);

    private static Json.List List(IEnumerable<Json> items) => Json.ListOf([.. items]);
}
