using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Runs.Prompts;

namespace ProcRunner.Runs.Tests.Properties;

/// <summary>Turns the dice into commands, sensible and senseless.</summary>
internal static class AnyCommand
{
    private static readonly string[] Texts =
    [
        "",
        "done",
        "0",
        "-0.052 in",
        "0.052 0.052",
        "0.0579 in; 0.0581 in",
        "52",
        "1,5",
        "79228162514264337593543950335 in; 79228162514264337593543950335 in",
        "0.0000000000000000000000000001 in",
        "cracked",
        "sound",
        "replace",
        "keep",
        "G-8, no lot",
        "\u001b[2J\u202e",
        "0.057 in",
        "1.60 mm 1.2 mm",
        new string('9', 600),
        "0.330 0.331",
    ];

    public static RunCommand Of(Rig rig, Turn turn)
    {
        At[] all = [.. StateDump.EveryPlace(rig.Plan)];
        At[] open = [.. rig.Outlook.Open];
        At anywhere = all[turn.Where % all.Length];
        At somewhereOpen = open.Length == 0 ? anywhere : open[turn.Where % open.Length];
        At next = Prompter.Next(rig.State) ?? anywhere;
        string text = Texts[turn.How % Texts.Length];
        return (turn.What % 40) switch
        {
            < 16 => GoodEntry.For(rig, next),
            < 20 => GoodEntry.For(rig, somewhereOpen),
            20 or 21 => new RunCommand.Enter(somewhereOpen, OutOfLimits(rig, somewhereOpen, turn.How)),
            22 => new RunCommand.Enter(somewhereOpen, text),
            23 => new RunCommand.Enter(anywhere, text),
            24 => new RunCommand.Correct(anywhere, text, "mistyped"),
            25 => new RunCommand.Correct(anywhere, OutOfLimits(rig, anywhere, turn.How), turn.How == 0 ? " " : "slip"),
            26 or 27 or 28 => Correction(rig, turn),
            29 => new RunCommand.LiftToMeasure(Cuts(rig, turn)),
            30 => new RunCommand.EndCut(Cuts(rig, turn)),
            31 or 32 => AnyWay(rig, turn),
            33 => AnySign(rig, turn),
            34 => turn.How % 4 == 3
                ? new RunCommand.TakeBack(anywhere, "it is for this head")
                : new RunCommand.LeaveOut(turn.How < 128 ? somewhereOpen : anywhere, "not for this head"),
            35 or 36 => Report(rig, turn),
            37 => OfJob(rig, turn),
            _ => new RunCommand.Enter(new At((turn.Where * 7) - 9, (turn.How * 3) - 300), text),
        };
    }

    private static RunCommand.Report Report(Rig rig, Turn turn)
    {
        IReadOnlyList<Change> changes = rig.Plan.Procedure.Changes;
        int position = (turn.Where % (rig.Plan.Positions.Count + 3)) - 2;
        return new RunCommand.Report(
            turn.How == 255 ? "the weather" : changes[turn.How % changes.Count].Name,
            position
        );
    }

    // What has been entered and can be corrected, with a good or a bad value.
    private static RunCommand Correction(Rig rig, Turn turn)
    {
        At[] entered = [.. rig.Outlook.All.Where(at => rig.State.Find(at) is { Sequence: > 0 })];
        if (entered.Length == 0)
        {
            return new RunCommand.TakeUp();
        }

        At at = entered[turn.Where % entered.Length];
        Prompt prompt = Prompter.At(rig.State, rig.Shop, at);
        string text =
            turn.How % 3 == 0 ? OutOfLimits(rig, at, turn.How)
            : prompt.Awaits == Awaited.WayOn && prompt.Step.Taking is not null
                ? GoodEntry.Places(prompt, RigShop.Q("0.050 in"))
            : GoodEntry.Text(rig, prompt);
        return new RunCommand.Correct(at, text, "slip");
    }

    private static At Cuts(Rig rig, Turn turn)
    {
        At[] cuts = [.. rig.Outlook.All.Where(at => rig.Plan.Steps[at.Step].Work is StepWork.Cut)];
        At[] inHand = [.. cuts.Where(at => rig.State.StandingOf(at) == StepStanding.InHand)];
        cuts = inHand.Length > 0 ? inHand : cuts;
        return cuts[turn.Where % cuts.Length];
    }

    private static string OutOfLimits(Rig rig, At at, byte how)
    {
        Prompt prompt = Prompter.At(rig.State, rig.Shop, at with { Position = Here(rig, at) });
        decimal by = how switch
        {
            < 80 => 0.0001m,
            < 160 => 0.002m,
            _ => 0.0125m,
        };
        Quantity value =
            how % 2 == 0 && prompt.Window.High is { } high ? new Quantity(high.Value + by, high.Unit)
            : prompt.Window.Low is { } low ? new Quantity(low.Value - by, low.Unit)
            : prompt.Awaits == Awaited.Readout ? new Quantity(prompt.Target!.Show.Value + by, prompt.Target.Show.Unit)
            : new Quantity(0.3475m, Units.Inch);
        return prompt.Awaits is Awaited.Finding or Awaited.Choice
            ? prompt.Choices[^1]
            : GoodEntry.Places(prompt, value);
    }

    private static int Here(Rig rig, At at) =>
        rig.Plan.PositionsOf(rig.Plan.Steps[at.Step]).Contains(at.Position)
            ? at.Position
            : rig.Plan.PositionsOf(rig.Plan.Steps[at.Step])[0];

    private static RunCommand AnyWay(Rig rig, Turn turn)
    {
        At[] out_ = [.. rig.Outlook.All.Where(at => rig.State.StandingOf(at) == StepStanding.Out)];
        At[] places =
            out_.Length > 0 ? out_ : [.. rig.Outlook.All.Where(at => rig.Plan.Steps[at.Step].WaysOn.Count > 0)];
        At at = places[turn.Where % places.Length];
        IReadOnlyList<WayOn> ways = rig.Plan.Steps[at.Step].WaysOn;
        WayOn way = ways[turn.How % ways.Count];
        return way.Kind == WayKind.Scrap && turn.How < 200 ? GoodEntry.Way(rig, at, ways[0])
            : turn.How % 7 == 0 ? new RunCommand.TakeWay(at, way.Text, "", null)
            : GoodEntry.Way(rig, at, way);
    }

    private static RunCommand.Sign AnySign(Rig rig, Turn turn)
    {
        At[] signs = [.. rig.Outlook.All.Where(at => rig.Plan.Steps[at.Step].Work is StepWork.Sign)];
        At at = signs[turn.Where % signs.Length];
        return (turn.How % 6) switch
        {
            0 => rig.SignOf(at, RigShop.Worker),
            1 => rig.SignOf(at, RigShop.Trainee),
            2 => rig.SignOf(at, RigShop.Trainee, RigShop.Lead),
            3 => rig.SignOf(at, RigShop.Gone),
            4 => rig.SignOf(signs[0], RigShop.Lead) with { At = at },
            _ => rig.SignOf(at, RigShop.Lead),
        };
    }

    private static RunCommand OfJob(Rig rig, Turn turn) =>
        (turn.How % 8) switch
        {
            0 => new RunCommand.Hold("waiting for parts"),
            1 => new RunCommand.Hold(" "),
            2 or 3 or 4 => new RunCommand.TakeUp(),
            5 => new RunCommand.HandOver(turn.Where % 2 == 0 ? RigShop.Trainee : "nobody"),
            6 => new RunCommand.Note(new At(turn.Where - 5, turn.How - 9), "a\u0007b\ud800"),
            _ => new RunCommand.ChooseLimit(
                turn.Where % 3 == 0 ? "recession" : "stem height",
                turn.Where % 4 == 0 ? null : (turn.Where % 5) - 2,
                RigShop.Q("1.550 in"),
                null,
                RigShop.Q(turn.Where % 7 == 0 ? "0.2 mm" : "1.580 in"),
                "the builder's own figure"
            ),
        };
}
