using ProcRunner.Text;
using ProcRunner.Trail;

namespace ProcRunner.Runs;

/// <summary>
/// How a run's events are written. The names and keys are a format: explicit, never renamed, old ones still read. Each
/// event is a map whose key <c>e</c> holds the event's name; docs/event-catalogue.md shows one of each.
/// </summary>
/// <remarks>
/// Steps stand by their full name (<c>step</c>) and positions by theirs (<c>at</c>, "head" for the head); quantities are
/// texts with number and unit, the scale kept; times are UTC, ISO 8601.
/// </remarks>
public static class RunEventFormat
{
    private const string Name = "e";

    /// <summary>Every event name, in the order of the catalogue.</summary>
    public static IReadOnlyList<string> Names { get; } =
    [
        "job opened",
        "reading taken",
        "entry questioned",
        "finding noted",
        "choice made",
        "step done",
        "part fitted",
        "zero set",
        "pass cut",
        "cutter lifted",
        "cut ended",
        "went stale",
        "reopened",
        "way taken",
        "conceded",
        "head scrapped",
        "signed off",
        "job released",
        "entry corrected",
        "left out",
        "leaving out taken back",
        "noted",
        "job held",
        "job taken up",
        "handed over",
        "gauge chosen",
        "limit chosen",
        "change reported",
        "came back",
        "head linked",
        "heads compared",
    ];

    /// <summary>The event as it stands in an entry.</summary>
    public static Json.Map Write(Plan plan, RunEvent happened) =>
        happened switch
        {
            RunEvent.JobOpened e => RunEventParts.WriteHeader(e.Header),
            RunEvent.ReadingTaken e => At("reading taken", plan, e.At, ("reading", RunEventParts.Write(e.Reading))),
            RunEvent.EntryQuestioned e => At(
                "entry questioned",
                plan,
                e.At,
                ("typed", T(SafeText.Clean(e.Typed))),
                ("why", T(SafeText.Clean(e.Why))),
                ("meanings", RunEventParts.Texts(e.Meanings))
            ),
            RunEvent.FindingNoted e => At(
                "finding noted",
                plan,
                e.At,
                ("finding", T(e.Finding)),
                ("good", new Json.Flag(e.Good))
            ),
            RunEvent.ChoiceMade e => At("choice made", plan, e.At, ("choice", T(e.Choice))),
            RunEvent.StepDone e => At("step done", plan, e.At, ("said", T(e.Said))),
            RunEvent.PartFitted e => At(
                "part fitted",
                plan,
                e.At,
                ("part", T(e.Part)),
                ("number", T(e.Number)),
                ("lot", T(e.Lot))
            ),
            RunEvent.ZeroSet e => At(
                "zero set",
                plan,
                e.At,
                ("zero", RunEventParts.Write(e.Zero)),
                ("readout", T(e.Readout)),
                ("typed", T(e.Typed))
            ),
            RunEvent.PassCut e => At(
                "pass cut",
                plan,
                e.At,
                ("typed", T(e.Typed)),
                ("progress", RunEventParts.Write(e.Progress)),
                ("target", RunEventParts.Write(e.Target))
            ),
            RunEvent.CutterLifted e => At("cutter lifted", plan, e.At),
            RunEvent.CutEnded e => At("cut ended", plan, e.At),
            _ => WriteConsequence(plan, happened),
        };

    /// <summary>The event that a map holds; null when it holds none that this program knows, or not as it should.</summary>
    public static RunEvent? Read(Plan plan, Json.Map map)
    {
        RunEventReader from = new(plan, map);
        RunEvent? read = map.TextAt(Name) switch
        {
            "job opened" => new RunEvent.JobOpened(RunEventParts.ReadHeader(from)),
            "reading taken" => new RunEvent.ReadingTaken(from.At(), RunEventParts.ReadReading(from.Inner("reading"))),
            "entry questioned" => new RunEvent.EntryQuestioned(
                from.At(),
                from.Text("typed"),
                from.Text("why"),
                from.Texts("meanings")
            ),
            "finding noted" => new RunEvent.FindingNoted(from.At(), from.Text("finding"), from.Flag("good")),
            "choice made" => new RunEvent.ChoiceMade(from.At(), from.Text("choice")),
            "step done" => new RunEvent.StepDone(from.At(), from.Text("said")),
            "part fitted" => new RunEvent.PartFitted(
                from.At(),
                from.Text("part"),
                from.Text("number"),
                from.Text("lot")
            ),
            "zero set" => new RunEvent.ZeroSet(
                from.At(),
                RunEventParts.ReadZero(from.Inner("zero")),
                from.Text("readout"),
                from.Text("typed")
            ),
            "pass cut" => new RunEvent.PassCut(
                from.At(),
                from.Text("typed"),
                RunEventParts.ReadProgress(from.Inner("progress")),
                RunEventParts.ReadTarget(from.Inner("target"))
            ),
            "cutter lifted" => new RunEvent.CutterLifted(from.At()),
            "cut ended" => new RunEvent.CutEnded(from.At()),
            _ => ReadConsequence(from, map.TextAt(Name)),
        };
        return from.Failed ? null : read;
    }

    private static Json.Map WriteConsequence(Plan plan, RunEvent happened) =>
        happened switch
        {
            RunEvent.WentStale e => Json.MapOf(
                (Name, T("went stale")),
                ("items", RunEventParts.Write(plan, e.Items)),
                ("cause", T(e.Cause)),
                ("mover", T(e.Mover < 0 ? "" : plan.StepAt(e.Mover).FullName))
            ),
            RunEvent.Reopened e => Json.MapOf(
                (Name, T("reopened")),
                ("items", Json.ListOf([.. e.Items.Select(at => (Json)Json.MapOf(Place(plan, at)))])),
                ("cause", T(e.Cause))
            ),
            RunEvent.WayTaken e => At(
                "way taken",
                plan,
                e.At,
                ("way", T(e.Way)),
                ("kind", T(WayWord.Of(e.Kind))),
                ("reason", T(SafeText.Clean(e.Reason)))
            ),
            RunEvent.Conceded e => At(
                "conceded",
                plan,
                e.At,
                [("reason", T(SafeText.Clean(e.Reason))), ("mark", M(e.Mark)), .. Covers(e.Covers)]
            ),
            RunEvent.HeadScrapped e => At(
                "head scrapped",
                plan,
                e.At,
                [("reason", T(SafeText.Clean(e.Reason))), ("mark", M(e.Mark)), .. Covers(e.Covers)]
            ),
            RunEvent.SignedOff e => At(
                "signed off",
                plan,
                e.At,
                ("meaning", T(e.Meaning)),
                ("covers", T(e.Covers)),
                ("mark", M(e.Mark)),
                ("beside", M(e.Beside))
            ),
            RunEvent.JobReleased e => At(
                "job released",
                plan,
                e.At,
                ("covers", T(e.Covers)),
                ("mark", M(e.Mark)),
                ("beside", M(e.Beside))
            ),
            _ => WriteOfJob(plan, happened),
        };

    private static Json.Map WriteOfJob(Plan plan, RunEvent happened) =>
        happened switch
        {
            RunEvent.EntryCorrected e => At("entry corrected", plan, e.At, ("reason", T(e.Reason))),
            RunEvent.LeftOut e => At("left out", plan, e.At, ("reason", T(e.Reason))),
            RunEvent.LeavingOutTakenBack e => At("leaving out taken back", plan, e.At, ("reason", T(e.Reason))),
            RunEvent.Noted { At: { } at } e => At("noted", plan, at, ("text", T(e.Text))),
            RunEvent.Noted e => Json.MapOf((Name, T("noted")), ("text", T(e.Text))),
            RunEvent.JobHeld e => Json.MapOf((Name, T("job held")), ("reason", T(e.Reason))),
            RunEvent.JobTakenUp => Json.MapOf((Name, T("job taken up"))),
            RunEvent.HandedOver e => Json.MapOf((Name, T("handed over")), ("from", T(e.From)), ("to", T(e.To))),
            RunEvent.GaugeChosen e => Json.MapOf((Name, T("gauge chosen")), ("kind", T(e.Kind)), ("gauge", T(e.Gauge))),
            RunEvent.LimitChosen e => Json.MapOf(
                (Name, T("limit chosen")),
                ("of", T(e.Characteristic)),
                ("at", e.Position is { } position ? T(plan.PositionName(position)) : Json.Nothing),
                ("low", RunEventParts.Quantity(e.Low)),
                ("aim", RunEventParts.Quantity(e.Aim)),
                ("high", RunEventParts.Quantity(e.High)),
                ("reason", T(e.Reason))
            ),
            RunEvent.ChangeReported e => Json.MapOf(
                (Name, T("change reported")),
                ("change", T(e.Change)),
                ("at", T(plan.PositionName(e.Position)))
            ),
            _ => WriteOfOthers(happened),
        };

    private static Json.Map WriteOfOthers(RunEvent happened) =>
        happened switch
        {
            RunEvent.CameBack e => Json.MapOf(
                (Name, T("came back")),
                ("job", T(e.Job)),
                ("stamp", T(e.Stamp)),
                ("last", T(e.Last))
            ),
            RunEvent.HeadLinked e => Json.MapOf((Name, T("head linked")), ("job", T(e.Job)), ("stamp", T(e.Stamp))),
            RunEvent.HeadsCompared e => Json.MapOf(
                (Name, T("heads compared")),
                ("job", T(e.Job)),
                ("stamp", T(e.Stamp)),
                (
                    "figures",
                    Json.ListOf([
                        .. e.Figures.Select(f =>
                            (Json)
                                Json.MapOf(
                                    ("of", T(f.Of)),
                                    ("here", T(f.Here)),
                                    ("there", T(f.There)),
                                    ("difference", T(f.Difference)),
                                    ("differs", new Json.Flag(f.Differs))
                                )
                        ),
                    ])
                ),
                ("together", new Json.Flag(e.Together)),
                ("reason", T(e.Reason))
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(happened)),
        };

    private static RunEvent? ReadOfOthers(RunEventReader from, string? name) =>
        name switch
        {
            "came back" => new RunEvent.CameBack(from.Text("job"), from.Text("stamp"), from.Text("last")),
            "head linked" => new RunEvent.HeadLinked(from.Text("job"), from.Text("stamp")),
            "heads compared" => new RunEvent.HeadsCompared(
                from.Text("job"),
                from.Text("stamp"),
                [
                    .. from.Each("figures")
                        .Select(f => new HeadFigure(
                            f.Text("of"),
                            f.Text("here"),
                            f.Text("there"),
                            f.Text("difference"),
                            f.Flag("differs")
                        )),
                ],
                from.Flag("together"),
                from.Text("reason")
            ),
            _ => null,
        };

    private static RunEvent? ReadConsequence(RunEventReader from, string? name) =>
        name switch
        {
            "went stale" => new RunEvent.WentStale(from.Stale("items"), from.Text("cause"), from.Mover("mover")),
            "reopened" => new RunEvent.Reopened(from.Places("items"), from.Text("cause")),
            "way taken" => new RunEvent.WayTaken(
                from.At(),
                from.Text("way"),
                from.Word("kind", WayWord.Find),
                from.Text("reason")
            ),
            "conceded" => new RunEvent.Conceded(
                from.At(),
                from.Text("reason"),
                from.Mark("mark"),
                from.Has("covers") ? from.Text("covers") : ""
            ),
            "head scrapped" => new RunEvent.HeadScrapped(
                from.At(),
                from.Text("reason"),
                from.Mark("mark"),
                from.Has("covers") ? from.Text("covers") : ""
            ),
            "signed off" => new RunEvent.SignedOff(
                from.At(),
                from.Text("meaning"),
                from.Text("covers"),
                from.Mark("mark"),
                from.MarkOrNull("beside")
            ),
            "job released" => new RunEvent.JobReleased(
                from.At(),
                from.Text("covers"),
                from.Mark("mark"),
                from.MarkOrNull("beside")
            ),
            _ => ReadOfJob(from, name),
        };

    private static RunEvent? ReadOfJob(RunEventReader from, string? name) =>
        name switch
        {
            "entry corrected" => new RunEvent.EntryCorrected(from.At(), from.Text("reason")),
            "left out" => new RunEvent.LeftOut(from.At(), from.Text("reason")),
            "leaving out taken back" => new RunEvent.LeavingOutTakenBack(from.At(), from.Text("reason")),
            "noted" => new RunEvent.Noted(from.Has("step") ? from.At() : null, from.Text("text")),
            "job held" => new RunEvent.JobHeld(from.Text("reason")),
            "job taken up" => new RunEvent.JobTakenUp(),
            "handed over" => new RunEvent.HandedOver(from.Text("from"), from.Text("to")),
            "gauge chosen" => new RunEvent.GaugeChosen(from.Text("kind"), from.Text("gauge")),
            "limit chosen" => new RunEvent.LimitChosen(
                from.Text("of"),
                from.PositionOrNull("at"),
                from.QuantityOrNull("low"),
                from.QuantityOrNull("aim"),
                from.QuantityOrNull("high"),
                from.Text("reason")
            ),
            "change reported" => new RunEvent.ChangeReported(
                from.Text("change"),
                from.PositionOrNull("at") ?? Runs.At.Head
            ),
            _ => ReadOfOthers(from, name),
        };

    private static Json.Map At(string name, Plan plan, At at, params ReadOnlySpan<(string, Json)> rest) =>
        Json.MapOf([(Name, T(name)), .. Place(plan, at), .. rest]);

    private static (string, Json)[] Place(Plan plan, At at) =>
        [("step", T(plan.StepAt(at.Step).FullName)), ("at", T(plan.PositionName(at.Position)))];

    private static (string, Json)[] Covers(string digest) => digest.Length == 0 ? [] : [("covers", T(digest))];

    private static Json.Text T(string text) => new(text);

    private static Json M(Mark? mark) => RunEventParts.Write(mark);
}
