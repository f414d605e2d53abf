using System.Globalization;
using ProcRunner.Quantities;
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
            ("opened", Text(JobListing.Second(account.Entries[0].At))),
            ("since", Text(JobListing.Second(account.Entries[^1].At))),
            ("entries", new Json.Whole(account.Entries.Count)),
            ("proof", account.Proof is { } proof ? Text(proof.ToString()) : Json.Nothing),
            ("values", List(account.Values.Select(Value))),
            ("parts", List(state.Parts.Select(p => Part(state.Plan, p)))),
            (
                "decisions",
                List(
                    account.Decisions.Select(d =>
                        Json.MapOf(("about", Text(d.Subject)), ("at", Text(d.Position)), ("choice", Text(d.Choice)))
                    )
                )
            ),
            ("marks", List(account.Marks.Select(m => Mark(state.Plan, m)))),
            ("corrections", List(state.Corrections.Select(c => Corrected(account, c)))),
            ("notes", List(state.Notes.Select(n => Note(account, n.Sequence, n.Note)))),
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

    private static Json.Map Part(Plan plan, RunEvent.PartFitted part) =>
        Json.MapOf(
            ("part", Text(part.Part)),
            ("at", Text(plan.PositionName(part.At.Position))),
            ("number", Text(part.Number)),
            ("lot", Text(part.Lot))
        );

    private static Json.Map Mark(Plan plan, JobMark mark) =>
        Json.MapOf(
            ("meaning", Text(mark.Meaning)),
            ("step", Text(plan.NameOf(mark.At))),
            ("person", Text(mark.Mark.Person)),
            ("name", Text(mark.Mark.Name)),
            ("time", Text(JobListing.Second(mark.Mark.At))),
            ("beside", mark.Beside is { } lead ? Text(lead.Name) : Json.Nothing),
            ("reason", Text(mark.Reason)),
            ("entry", new Json.Whole(mark.Sequence))
        );

    private static Json.Map Corrected(JobAccount account, Correction correction) =>
        Json.MapOf(
            ("step", Text(account.State.Plan.NameOf(correction.At))),
            ("was", Text(correction.Was)),
            ("became", Text(correction.Became)),
            ("reason", Text(correction.Reason)),
            ("by", Text(account.Entries[(int)correction.Sequence - 1].Operator)),
            ("entry", new Json.Whole(correction.Sequence))
        );

    private static Json.Map Note(JobAccount account, long sequence, RunEvent.Noted note) =>
        Json.MapOf(
            ("text", Text(note.Text)),
            ("step", note.At is { } at ? Text(account.State.Plan.NameOf(at)) : Json.Nothing),
            ("by", Text(account.Entries[(int)sequence - 1].Operator)),
            ("entry", new Json.Whole(sequence))
        );

    private static Json Amount(Quantity? amount) =>
        amount is { } some
            ? Json.MapOf(("v", Text(some.Value.ToString(CultureInfo.InvariantCulture))), ("u", Text(some.Unit.Symbol)))
            : Json.Nothing;

    private static Json.Text Text(string text) => new Json.Text(text);

    private static Json.List List(IEnumerable<Json> items) => Json.ListOf([.. items]);
}
