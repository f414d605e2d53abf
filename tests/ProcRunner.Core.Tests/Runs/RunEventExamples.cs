using ProcRunner.Procedures;
using ProcRunner.Runs;
using static ProcRunner.Testing.SmallPlan;
using static ProcRunner.Testing.Some;

namespace ProcRunner.Core.Tests.Runs;

/// <summary>At least one of each event of a job's trail, and one of each shape where there are several. All invented.</summary>
internal static class RunEventExamples
{
    private const string Recession = "seat cut / recession";

    public static IReadOnlyList<EventExample<RunEvent>> All { get; } =
    [.. OfTheJob(), .. OfSteps(), .. OfCuts(), .. Consequences(), .. Dispositions(), .. OfPeople()];

    private static IEnumerable<EventExample<RunEvent>> OfTheJob() =>
        [
            new(
                new RunEvent.JobOpened(
                    new JobHeader
                    {
                        Stamp = "EX-1",
                        ProcedureDigest = Digest("the procedure's text").ToString(),
                        HeadDigest = Digest("the head spec's text").ToString(),
                        Customer = "a made-up farm",
                        Complaint = "uses water",
                        EarlierWork = "not known",
                    }
                ),
                "A job was opened. `procedure` and `head` are the SHA-256 of the two texts that it keeps to its end; "
                    + "the texts about the customer may be empty."
            ),
            new(
                new RunEvent.JobOpened(
                    new JobHeader
                    {
                        Stamp = "EX-2",
                        ProcedureDigest = Digest("the procedure's text").ToString(),
                        HeadDigest = Digest("the practice head's text").ToString(),
                        Practice = true,
                    }
                ),
                "On a practice head."
            ),
        ];

    private static IEnumerable<EventExample<RunEvent>> OfSteps() =>
        [
            new(
                new RunEvent.ReadingTaken(At("guide replacement / guide bore", "1E"), GuideBore),
                "A reading was taken, in limits or not: what was typed, the value of each place, the `value` that counts, how "
                    + "it was judged, and what was worked out from it."
            ),
            new(
                new RunEvent.ReadingTaken(At(Recession, "1E"), AfterACut),
                "After a pass: `predicted` is what the readout led to expect, and `disagrees` is true when the gauge says "
                    + "otherwise by more than both are uncertain."
            ),
            new(
                new RunEvent.EntryQuestioned(
                    At("guide replacement / guide bore", "1E"),
                    "52",
                    "52 in is absurd here",
                    ["52 thou", "0.052 in"]
                ),
                "An entry wasn't taken but questioned, with what it may have meant."
            ),
            new(
                new RunEvent.FindingNoted(At("teardown / cracks", "1E"), "none", Good: true),
                "An inspection found this; `good` says whether the procedure lets it pass."
            ),
            new(
                new RunEvent.FindingNoted(At("teardown / cracks", "2I"), "between the seats", Good: false),
                "One that it doesn't let pass: the step is out of spec."
            ),
            new(
                new RunEvent.ChoiceMade(At("teardown / guide", "1E"), "replace"),
                "A choice was made on which later steps depend."
            ),
            new(
                new RunEvent.StepDone(At("guide replacement / chill the guide", "1E"), "half an hour in the freezer"),
                "An instruction was carried out; `said` is what the operator added, often nothing."
            ),
            new(
                new RunEvent.PartFitted(At("guide replacement / guide fitted", "1E"), "guide", "G-100", "L-7"),
                "A part was fitted, with its number and lot."
            ),
        ];

    private static IEnumerable<EventExample<RunEvent>> OfCuts() =>
        [
            new(
                new RunEvent.ZeroSet(
                    At("seat cut / seat", "1E"),
                    Zero,
                    "in by 0.0005, grows deeper, shows travel, counts from one zero, zeroed at touch-off",
                    "0"
                ),
                "The readout was set: to which number (`set`), and what the reading was there (`measured`). `readout` is how "
                    + "it was set up that day."
            ),
            new(
                new RunEvent.PassCut(
                    At(Recession, "1E"),
                    ".0240",
                    new CutProgress(
                        Zero,
                        Quantity("0.0240 in"),
                        Quantity("0.0240 in"),
                        Quantity("0.0000 in"),
                        Quantity("0.0230 in"),
                        Measures: true
                    ),
                    new CutTarget(
                        Quantity("0.0240 in"),
                        StopsShort: true,
                        Quantity("0.0240 in"),
                        "0.0520 in aim - 0.0230 in = 0.0290 in; stop short by 0.0050 in"
                    )
                ),
                "A pass was cut until the readout showed `typed`. `target` is what it was to show, `left` the way there and "
                    + "`working` how that was worked out; `progress` is where the cut stands now, and `measures` says that a "
                    + "reading is due before more is cut."
            ),
            new(
                new RunEvent.PassCut(
                    At(Recession, "1E"),
                    ".0265",
                    new CutProgress(
                        Zero,
                        Quantity("0.0265 in"),
                        Quantity("0.0265 in"),
                        Quantity("0.0240 in"),
                        Quantity("0.0470 in"),
                        Measures: false
                    ),
                    new CutTarget(
                        Quantity("0.0290 in"),
                        StopsShort: false,
                        Quantity("0.0050 in"),
                        "0.0520 in aim - 0.0470 in = 0.0050 in"
                    )
                ),
                "On the way to the aim: the target isn't reached yet, and no reading is due."
            ),
            new(
                new RunEvent.CutterLifted(At(Recession, "1E")),
                "The cutter was lifted to measure before the target was reached."
            ),
            new(new RunEvent.CutEnded(At(Recession, "1E")), "A cut was ended within its limits, short of its aim."),
        ];

    private static IEnumerable<EventExample<RunEvent>> Consequences() =>
        [
            new(
                new RunEvent.WentStale(
                    [
                        new StaleItem(Joined.CharacteristicIndex("recession"), -1, Position("1E")),
                        new StaleItem(-1, At("seat cut / seat").Step, Position("1E")),
                    ],
                    "chill the guide",
                    At("guide replacement / chill the guide").Step
                ),
                "Values (`of`) and steps being done (`step`) no longer hold, because of `cause`. `mover` is the step that "
                    + "moved what they rest on; it counts as done before them."
            ),
            new(
                new RunEvent.WentStale(
                    [new StaleItem(Joined.CharacteristicIndex("guide bore"), -1, Position("2I"))],
                    "cutter edge changed",
                    -1
                ),
                "`mover` is empty when no step moved it, but a report or a choice."
            ),
            new(
                new RunEvent.Reopened([At("seat cut / seat", "1E"), At(Recession, "1E")], "another guide"),
                "Steps are to be done over, because of `cause`."
            ),
            new(
                new RunEvent.EntryCorrected(At("guide replacement / guide bore", "1E"), "read the wrong dial"),
                "The events after it in the same entry take the place of what stood before. Both stay in the trail."
            ),
            new(
                new RunEvent.LeftOut(At("guide replacement / chill the guide", "1E"), "it goes in without"),
                "A step was left out as not for this head, where the procedure allows it."
            ),
            new(
                new RunEvent.LeavingOutTakenBack(
                    At("guide replacement / chill the guide", "1E"),
                    "it is tight after all"
                ),
                "That a step was left out is taken back. A `reopened` in the same entry opens it."
            ),
            new(
                new RunEvent.GaugeChosen("depth gauge", Gauge.Id),
                "A gauge was chosen for a kind of reading; it is kept until another is chosen."
            ),
            new(
                new RunEvent.LimitChosen(
                    "recession",
                    Position("1E"),
                    Quantity("0.046 in"),
                    Quantity("0.052 in"),
                    Quantity("0.058 in"),
                    "maker's sheet of that year"
                ),
                "Limits that the head spec doesn't give were chosen by a person, with the reason."
            ),
            new(
                new RunEvent.LimitChosen("clearance", null, null, null, Quantity("0.0045 in"), "shop's limit"),
                "`at` is null when they hold everywhere; any of the three may be null."
            ),
            new(
                new RunEvent.ChangeReported("cutter edge", Position("1E")),
                "The operator reported a change that the procedure knows; what it moved went stale in the same entry."
            ),
        ];

    private static IEnumerable<EventExample<RunEvent>> Dispositions() =>
        [
            new(
                new RunEvent.WayTaken(At(Recession, "1E"), "new insert", WayKind.Replace, "0.002 too deep"),
                "A way on was chosen for a result out of spec. `kind` is again, rework, replace, concession or scrap."
            ),
            new(
                new RunEvent.Conceded(
                    At(Recession, "1E"),
                    "agreed with the customer",
                    Mark("ada"),
                    Digest("result").ToString()
                ),
                "A result out of spec was accepted by a lead, over whose signature it stands."
            ),
            new(
                new RunEvent.HeadScrapped(
                    At("teardown / cracks", "2I"),
                    "cracked through",
                    Mark("ada"),
                    Digest("result").ToString()
                ),
                "The head was given up by a lead. Nothing may follow."
            ),
        ];

    private static IEnumerable<EventExample<RunEvent>> OfPeople() =>
        [
            new(
                new RunEvent.SignedOff(
                    At("teardown / measured"),
                    "measured",
                    Digest("the stage's results").ToString(),
                    Mark("ben"),
                    Mark("ada")
                ),
                "A stage was signed. `covers` is the digest of exactly the results that were signed for; `beside` is the lead "
                    + "who signed beside a trainee."
            ),
            new(
                new RunEvent.SignedOff(
                    At("seat cut / measured"),
                    "measured",
                    Digest("other results").ToString(),
                    Mark("ben"),
                    null
                ),
                "`beside` is null when nobody had to."
            ),
            new(
                new RunEvent.JobReleased(
                    At("assemble / released"),
                    Digest("the last entry").ToString(),
                    Mark("ada"),
                    null
                ),
                "The job was closed out. `covers` is the digest of the entry before, and so of the whole trail."
            ),
            new(new RunEvent.Noted(At("teardown / guide", "1E"), "loose in its hole"), "A note on a step."),
            new(new RunEvent.Noted(null, "customer rang"), "A note on the job."),
            new(new RunEvent.JobHeld("waits for parts"), "The job was put aside."),
            new(new RunEvent.JobTakenUp(), "The job was taken up again."),
            new(new RunEvent.HandedOver("ben", "cal"), "Another person goes on with the job."),
            new(
                new RunEvent.CameBack("mfrggzdfmztwq2lknnwg23tpoa", "EX-0", new string('0', 64)),
                "The head came back. `job` is the earlier job, `last` the last digest of its trail at the time; that trail stays as it is."
            ),
            new(
                new RunEvent.HeadLinked("nbswy3dpfqqho33snrscc43jn4", "EX-3"),
                "Another head belongs to the same engine."
            ),
            new(
                new RunEvent.HeadsCompared(
                    "nbswy3dpfqqho33snrscc43jn4",
                    "EX-3",
                    [
                        new("deck thickness", "3.501 in", "3.508 in", "0.007 in", true),
                        new("recession, I 1", "0.052 in at 1I", "", "", false),
                    ],
                    Together: false,
                    "the other bank comes next week"
                ),
                "Two heads of one engine were compared, and how this one goes out was decided. A text that is empty wasn't known."
            ),
        ];

    private static ZeroPoint Zero => new(Quantity("0.0000 in"), Quantity("0.0230 in"));

    private static TakenReading GuideBore =>
        new()
        {
            Characteristic = "guide bore",
            Typed = ".3440 .3445",
            Places = [new("top", Quantity("0.3440 in")), new("bottom", Quantity("0.3445 in"))],
            Value = Quantity("0.3445 in"),
            Gauge = "",
            Judgement = Judgement.None,
            Worked =
            [
                new(
                    "clearance",
                    Quantity("0.0055 in"),
                    "0.3445 - 0.3390 = 0.0055",
                    new(
                        Verdict.Out,
                        Quantity("0.0015 in"),
                        null,
                        Quantity("0.0050 in"),
                        "rule of thumb",
                        "clearance 0.0055 in is over the high limit 0.0050 in (rule of thumb) by 0.0005 in"
                    )
                ),
            ],
        };

    private static TakenReading AfterACut =>
        new()
        {
            Characteristic = "recession",
            Typed = "45 thou",
            Places = [new("", Quantity("45 thou"))],
            Value = Quantity("45 thou"),
            Gauge = Gauge.Id,
            Judgement = new(
                Verdict.Short,
                Quantity("0.0460 in"),
                Quantity("0.0520 in"),
                Quantity("0.0580 in"),
                "maker",
                ""
            ),
            Worked = [],
            Predicted = Quantity("0.0470 in"),
            Disagrees = true,
        };
}
