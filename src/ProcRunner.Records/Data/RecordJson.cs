using System.Globalization;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Records.Papers;
using ProcRunner.Records.Story;
using ProcRunner.Runs;
using ProcRunner.Trail;

namespace ProcRunner.Records.Data;

/// <summary>
/// A record for programs, as docs/build-record.schema.json describes it. An amount is a map of its number as a text,
/// <c>v</c>, and its unit, <c>u</c>, so that no place is lost.
/// </summary>
public static class RecordJson
{
    /// <summary>The format's name and version, in every record.</summary>
    public const string Format = "procrunner build record 1";

    /// <summary>The record.</summary>
    public static Json.Map Of(BuildRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        JobHeader job = record.Job;
        return Json.MapOf(
            ("format", Text(Format)),
            ("stamp", Text(job.Stamp)),
            ("job", Text(record.JobId)),
            ("shop", Text(record.Shop)),
            ("shop-contact", Text(record.Contact)),
            ("customer", Text(job.Customer)),
            ("complaint", Text(job.Complaint)),
            ("earlier-work", Text(job.EarlierWork)),
            ("practice", new Json.Flag(job.Practice)),
            ("demo", new Json.Flag(record.IsDemo)),
            ("state", Text(record.StandingWord)),
            ("state-reason", Text(record.StandingReason)),
            ("procedure", ProcedureOf(record)),
            ("head", HeadOf(record)),
            ("length-unit", Text(record.Plan.Head.LengthUnit.Symbol)),
            ("opened", By(record.Opened)),
            ("last", By(record.Last)),
            ("proof", ProofOf(record.Proof)),
            ("stages", List(record.Stages.Select(Stage))),
            ("values", List(record.Values.Select(Value))),
            ("left", List(record.Left.Select(Left))),
            ("out-of-spec", List(record.Cases.Select(CaseOf))),
            ("earlier", List(record.Earlier.Select(EarlierOf))),
            ("corrections", List(record.Corrections.Select(CorrectionOf))),
            ("questioned", List(record.Questions.Select(QuestionOf))),
            ("moved", List(record.Renewals.Select(RenewalOf))),
            ("chosen-limits", List(record.ChosenLimits.Select(ChosenLimit))),
            ("findings", List(record.Findings.Select(SaidOf))),
            ("decisions", List(record.Decisions.Select(SaidOf))),
            ("other-heads", List(record.OtherHeads.Select(SaidOf))),
            ("since-earlier", record.EarlierStamp.Length > 0 ? Since(record) : Json.Nothing),
            ("left-out", List(record.LeftOut.Select(SaidOf))),
            ("parts", List(record.Parts.Select(Part))),
            ("cuts", List(record.Cuts.Select(Cut))),
            ("gauges", List(record.Gauges.Select(GaugeOf))),
            ("tools", List(record.Tools.Select(SaidOf))),
            ("notes", List(record.Notes.Select(SaidOf))),
            ("marks", List(record.Marks.Select(Mark))),
            ("clock", Texts(record.Clock)),
            ("advice", List(record.Advice.Select(a => Json.MapOf(("text", Text(a.Text)), ("from", Text(a.From))))))
        );
    }

    /// <summary>A value.</summary>
    public static Json.Map Value(FinalValue value)
    {
        ArgumentNullException.ThrowIfNull(value);
        Judgement judgement = value.Record.Judgement;
        return Json.MapOf(
            ("name", Text(value.Name)),
            ("at", Text(value.Position)),
            ("value", Amount(value.Record.Value)),
            ("places", Places(value.Record.Places)),
            ("low", Amount(judgement.Low)),
            ("aim", Amount(judgement.Aim)),
            ("high", Amount(judgement.High)),
            ("origin", Text(judgement.Origin)),
            ("limit-note", Text(value.LimitNote)),
            ("verdict", Text(value.Verdict)),
            ("stale", new Json.Flag(value.Record.Stale)),
            ("step", Text(value.Step)),
            ("gauge", Text(value.Gauge)),
            ("worked-out", new Json.Flag(value.WorkedOut)),
            ("working", Text(value.Working)),
            ("as-found", Amount(value.Record.AsFound)),
            ("as-found-places", Places(value.FoundPlaces)),
            ("by", By(value.By)),
            ("entry", new Json.Whole(value.By.Entry))
        );
    }

    /// <summary>A part.</summary>
    public static Json.Map Part(PartTold part)
    {
        ArgumentNullException.ThrowIfNull(part);
        return Json.MapOf(
            ("part", Text(part.Part)),
            ("at", Text(part.Position)),
            ("number", Text(part.Number)),
            ("lot", Text(part.Lot)),
            ("in-place", new Json.Flag(part.IsInPlace)),
            ("by", By(part.By))
        );
    }

    /// <summary>A mark.</summary>
    public static Json.Map Mark(MarkTold told)
    {
        ArgumentNullException.ThrowIfNull(told);
        Mark mark = told.Mark.Mark;
        return Json.MapOf(
            ("meaning", Text(told.Mark.Meaning)),
            ("step", Text(told.Step)),
            ("person", Text(mark.Person)),
            ("name", Text(mark.Name)),
            ("time", Text(mark.At.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture))),
            ("beside", told.Mark.Beside is { } lead ? Text(lead.Name) : Json.Nothing),
            ("reason", Text(told.Mark.Reason)),
            ("signature", Text(mark.Signature)),
            ("entry", new Json.Whole(told.By.Entry))
        );
    }

    /// <summary>An amount, or null.</summary>
    public static Json Amount(Quantity? amount) =>
        amount is { } some
            ? Json.MapOf(("v", Text(some.Value.ToString(CultureInfo.InvariantCulture))), ("u", Text(some.Unit.Symbol)))
            : Json.Nothing;

    private static Json.Map Since(BuildRecord record) =>
        Json.MapOf(
            ("stamp", Text(record.EarlierStamp)),
            (
                "values",
                record.Comeback is { } comeback
                    ? List(
                        comeback
                            .Rows.Where(r => r.Found is not null)
                            .Select(r =>
                                Json.MapOf(
                                    ("name", Text(r.Name)),
                                    ("at", Text(r.Position)),
                                    ("then", Amount(r.Built)),
                                    ("found", Amount(r.Found)),
                                    ("change", Amount(r.Change)),
                                    ("used", Text(ComebackPart.Percent(r))),
                                    ("past-limit", new Json.Flag(r.IsPast))
                                )
                            )
                    )
                    : Json.Nothing
            )
        );

    private static Json.Map By(Stamped by) =>
        Json.MapOf(
            ("entry", new Json.Whole(by.Entry)),
            ("person", Text(by.Id)),
            ("name", Text(by.Person)),
            ("time", Text(by.Exact))
        );

    private static Json.Map Pinned(string name, string title, int revision, Revised? revised, string digest) =>
        Json.MapOf(
            ("name", Text(name)),
            ("title", Text(title)),
            ("revision", new Json.Whole(revision)),
            (
                "revised",
                revised is null ? Json.Nothing : Text(revised.On.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture))
            ),
            ("what-changed", Text(revised?.What ?? "")),
            ("sha256", Text(digest))
        );

    private static Json.Map ProcedureOf(BuildRecord record)
    {
        Procedure pinned = record.Plan.Procedure;
        return Pinned(pinned.Name, pinned.Title, pinned.Revision, pinned.Revised, record.Job.ProcedureDigest);
    }

    private static Json.Map HeadOf(BuildRecord record)
    {
        HeadSpec pinned = record.Plan.Head;
        return Pinned(pinned.Name, pinned.Title, pinned.Revision, pinned.Revised, record.Job.HeadDigest);
    }

    private static Json.Map ProofOf(Proof proof) =>
        Json.MapOf(
            ("code", proof.Code is { } code ? Text(code.ToString()) : Json.Nothing),
            ("check", Text(proof.Code is { } known ? $"procrunner verify --code {known}" : "")),
            ("last-entry", new Json.Whole(proof.LastEntry)),
            ("last-sha256", Text(proof.LastDigest.ToString())),
            ("first-lead", Text(proof.RootName)),
            ("first-lead-key", Text(proof.RootFingerprint))
        );

    private static Json.Map Stage(StageTold stage) =>
        Json.MapOf(
            ("name", Text(stage.Name)),
            ("people", List(stage.People.Select(p => (Json)Text(p)))),
            ("first", By(stage.First)),
            ("last", By(stage.Last)),
            ("marks", List(stage.Marks.Select(Mark)))
        );

    private static Json.Map Left(Reckoning left) =>
        Json.MapOf(
            ("about", Text(left.What)),
            ("at", Text(left.Position)),
            ("left", Amount(left.Left)),
            ("terms", List(left.Terms.Select(t => Amount(t)))),
            ("text", Text(left.Words)),
            ("origin", Text(left.Origin))
        );

    private static Json.Map CaseOf(Case told) =>
        Json.MapOf(
            ("stage", Text(told.Stage)),
            ("step", Text(told.Step)),
            ("at", Text(told.Position)),
            ("fault", Text(told.Fault)),
            ("counts-now", new Json.Flag(told.IsCurrent)),
            (
                "end",
                Text(
                    told.End switch
                    {
                        CaseEnd.Settled => "settled",
                        CaseEnd.Conceded => "conceded",
                        CaseEnd.Scrapped => "scrapped",
                        _ => "open",
                    }
                )
            ),
            ("outcome", Text(told.Outcome)),
            ("course", List(told.Lines.Select(l => Json.MapOf(("text", Text(l.Text)), ("by", By(l.By))))))
        );

    private static Json.Map EarlierOf(Earlier earlier) =>
        Json.MapOf(
            ("about", Text(earlier.About)),
            ("at", Text(earlier.Position)),
            ("was", Text(earlier.Was)),
            ("was-by", By(earlier.WasBy)),
            ("cause", Text(earlier.Cause)),
            ("until", By(earlier.Until)),
            ("then", Text(earlier.Then)),
            ("then-by", By(earlier.ThenBy))
        );

    private static Json.Map CorrectionOf(Correction correction) =>
        Json.MapOf(
            ("step", Text(correction.Step)),
            ("was", Text(correction.Was)),
            ("was-by", correction.WasBy is { } by ? By(by) : Json.Nothing),
            ("now", Text(correction.Now)),
            ("reason", Text(correction.Reason)),
            ("by", By(correction.By))
        );

    private static Json.Map QuestionOf(Questioned question) =>
        Json.MapOf(
            ("step", Text(question.Step)),
            ("typed", Text(question.Typed)),
            ("why", Text(question.Why)),
            ("then", Text(question.Then)),
            ("by", By(question.By))
        );

    private static Json.Map RenewalOf(Renewal renewal) =>
        Json.MapOf(
            ("cause", Text(renewal.Cause)),
            ("items", Texts(renewal.Items)),
            ("kept-as-found", Texts(renewal.NotAgain)),
            ("still-open", Texts(renewal.StillOpen)),
            ("no-longer-asked-for", Texts(renewal.NotWanted)),
            ("by", List(renewal.By.Select(By)))
        );

    private static Json.Map ChosenLimit(LimitTold told) =>
        Json.MapOf(
            ("name", Text(told.Limit.Characteristic)),
            ("at", Text(told.Position)),
            ("low", Amount(told.Limit.Low)),
            ("aim", Amount(told.Limit.Aim)),
            ("high", Amount(told.Limit.High)),
            ("reason", Text(told.Limit.Reason)),
            ("by", By(told.By))
        );

    private static Json.Map SaidOf(Said said) =>
        Json.MapOf(
            ("about", Text(said.About)),
            ("at", Text(said.Position)),
            ("text", Text(said.Text)),
            ("out-of-spec", new Json.Flag(said.IsBad)),
            ("why", Text(said.Why)),
            ("by", By(said.By))
        );

    private static Json.Map Cut(CutTold cut) =>
        Json.MapOf(
            ("step", Text(cut.What)),
            ("at", Text(cut.Position)),
            ("zero-set", Amount(cut.Zero.Set)),
            ("zero-measured", Amount(cut.Zero.Measured)),
            ("passes", List(cut.Passes.Select(p => Amount(p)))),
            ("measured", List(cut.Measured.Select(m => Amount(m)))),
            ("ended", Text(cut.Ended)),
            ("by", By(cut.By)),
            ("until", By(cut.Until))
        );

    private static Json.Map GaugeOf(GaugeTold told) =>
        Json.MapOf(
            ("id", Text(told.Id)),
            ("name", Text(told.Gauge?.Name ?? "")),
            ("kind", Text(told.Gauge?.Kind ?? "")),
            ("resolution", Amount(told.Gauge?.Resolution)),
            ("uncertainty", Amount(told.Gauge?.Uncertainty)),
            (
                "calibrated-until",
                told.Gauge?.CalibratedUntil is { } day
                    ? Text(day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture))
                    : Json.Nothing
            ),
            ("readings", new Json.Whole(told.Readings))
        );

    private static Json.List Places(IReadOnlyList<PlaceValue> places) =>
        List(places.Select(p => Json.MapOf(("place", Text(p.Place)), ("value", Amount(p.Value)))));

    private static Json.List Texts(IReadOnlyList<string> texts) => List(texts.Select(t => (Json)Text(t)));

    private static Json.Text Text(string text) => new(ProcRunner.Text.SafeText.Clean(text));

    private static Json.List List(IEnumerable<Json> items) => Json.ListOf([.. items]);
}
