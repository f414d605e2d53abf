using System.Text;
using ProcRunner.People;
using ProcRunner.Problems;
using ProcRunner.Procedures;
using ProcRunner.Procedures.Checks;
using ProcRunner.Runs.Prompts;
using ProcRunner.Shop;
using ProcRunner.Trail;
using ProcRunner.Yaml;

namespace ProcRunner.Runs.Tests;

/// <summary>
/// A job driven from a test. Every accepted command's events are written in the stored form, read back, and only then
/// applied, so that whatever a test sees has been through the trail.
/// </summary>
internal sealed class Rig
{
    private const string JobId = "mzxw6ytboiaaaaaaaaaaaaaaaa";
    private readonly List<byte[]> _trail = [];

    public Rig(string procedure, string head, ShopState? shop = null)
        : this(PlanOf(procedure, head), shop) { }

    public Rig(Plan plan, ShopState? shop = null)
    {
        (Plan, Shop) = (plan, shop ?? RigShop.State);
        State = new RunState(plan, JobId);
        JobHeader header = new()
        {
            Stamp = "1001",
            ProcedureDigest = Digest.Of("p"u8).ToString(),
            HeadDigest = Digest.Of("h"u8).ToString(),
        };
        Assert.IsType<Decision.Accepted>(Try(new RunCommand.OpenJob(header)));
    }

    public Plan Plan { get; }

    /// <summary>Every command and what came of it, for reading when a test fails.</summary>
    public StringBuilder Story { get; } = new();

    public ShopState Shop { get; set; }

    public RunState State { get; }

    /// <summary>The entries so far as they are stored, each a list of events.</summary>
    public IReadOnlyList<byte[]> Trail => _trail;

    public Moment Moment { get; set; } =
        new(new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.FromHours(1)), RigShop.Worker, Digest.Zero.ToString());

    public Outlook Outlook => new(State);

    public static Plan PlanOf(string procedure, string head)
    {
        Loaded<Procedure> steps = ProcedureFile.Load("procedure.yaml", Encoding.UTF8.GetBytes(procedure));
        Loaded<HeadSpec> spec = HeadSpecFile.Load("head.yaml", Encoding.UTF8.GetBytes(head));
        Problem[] problems = [.. steps.Problems, .. spec.Problems];
        Assert.True(problems.Length == 0, string.Join('\n', problems));
        Problem[] joined = [.. PlanCheck.Join(steps.Value!, spec.Value!, "head.yaml")];
        Assert.True(joined.Length == 0, string.Join('\n', joined));
        return new Plan(steps.Value!, spec.Value!);
    }

    /// <summary>The state that the stored entries give to a run of a plan, from nothing.</summary>
    public RunState Replay(Plan? plan = null)
    {
        RunState state = new(plan ?? Plan, JobId);
        for (int i = 0; i < _trail.Count; i++)
        {
            state.Apply(i + 1, Events(plan ?? Plan, _trail[i]));
        }

        return state;
    }

    public static IReadOnlyList<RunEvent> Events(Plan plan, byte[] stored)
    {
        Json.List list = Assert.IsType<Json.List>(CanonicalJson.Read(stored).Value);
        return [.. list.Items.Select(map => RunEventFormat.Read(plan, (Json.Map)map) ?? Unreadable(map))];
    }

    /// <summary>A place by words: step's name or full name, then the position's name; without one the head.</summary>
    public At At(string place)
    {
        int space = place.LastIndexOf(' ');
        int position = Runs.At.Head;
        bool placed = space > 0 && Plan.TryPosition(place[(space + 1)..], out position);
        string name = placed ? place[..space] : place;
        int at = placed ? position : Runs.At.Head;
        Step step =
            Plan.Steps.FirstOrDefault(s => s.FullName == name || s.Name == name)
            ?? throw new ArgumentException($"No step is called {name}.", nameof(place));
        return new At(step.Index, at);
    }

    public Decision Try(RunCommand command)
    {
        Decision decision = RunDecider.Decide(State, Shop, command, Moment);
        Story.AppendLine().Append(StoryOf(command)).Append(" -> ").Append((decision as Decision.Refused)?.Why);
        if (decision is Decision.Accepted accepted)
        {
            Story.AppendJoin(", ", accepted.Events.Select(e => e.GetType().Name));
            Assert.NotEmpty(accepted.Events);
            Json[] maps = [.. accepted.Events.Select(e => RunEventFormat.Write(Plan, e))];
            byte[] stored = CanonicalJson.Write(Json.ListOf(maps));
            _trail.Add(stored);
            State.Apply(_trail.Count, Events(Plan, stored));
            AssertFollowed();
        }

        return decision;
    }

    // The run's own outlook follows it entry by entry; one made anew looks at everything. They must agree, always.
    private void AssertFollowed()
    {
        Outlook followed = State.Outlook;
        Outlook anew = new(State);
        Assert.Equal(anew.Open, followed.Open);
        foreach (At at in anew.All)
        {
            bool same =
                anew.ViewOf(at) == followed.ViewOf(at)
                && anew.AskedAt(at) == followed.AskedAt(at)
                && anew.IsRecheck(at) == followed.IsRecheck(at);
            Assert.True(same, $"{Plan.NameOf(at)}: {anew.ViewOf(at)}, followed {followed.ViewOf(at)}");
        }
    }

    public IReadOnlyList<RunEvent> Do(RunCommand command) =>
        Try(command) switch
        {
            Decision.Accepted accepted => accepted.Events,
            Decision.Refused refused => throw new Xunit.Sdk.XunitException(
                $"Refused: {refused.Why} {string.Join(" | ", refused.WhatToDo)}"
            ),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    public Decision.Refused Refuses(RunCommand command) => Assert.IsType<Decision.Refused>(Try(command));

    public IReadOnlyList<RunEvent> Enter(string place, string text) => Do(new RunCommand.Enter(At(place), text));

    public Decision.Refused EnterRefused(string place, string text) => Refuses(new RunCommand.Enter(At(place), text));

    /// <summary>Enters and gives the reading that came of it.</summary>
    public TakenReading Read(string place, string text) =>
        Enter(place, text).OfType<RunEvent.ReadingTaken>().Single().Reading;

    public IReadOnlyList<RunEvent> Correct(string place, string text, string reason = "mistyped") =>
        Do(new RunCommand.Correct(At(place), text, reason));

    public IReadOnlyList<RunEvent> Way(string place, string way, string reason = "", string? lead = null) =>
        Do(WayOf(place, way, reason, lead));

    public RunCommand WayOf(string place, string way, string reason = "", string? person = null)
    {
        At at = At(place);
        WayOn? known = Plan.Steps[at.Step].WaysOn.FirstOrDefault(w => w.Text == way);
        WayKind kind = known?.Kind ?? WayKind.Concession;
        Mark? mark = person is null ? null : MarkOf(person, m => SignedBytes.OfWay(State, at, kind, reason, m));
        return new RunCommand.TakeWay(at, way, reason, mark);
    }

    public IReadOnlyList<RunEvent> Sign(string place, string person = RigShop.Lead, string? beside = null) =>
        Do(SignOf(At(place), person, beside));

    public RunCommand.Sign SignOf(At at, string person, string? beside = null)
    {
        Mark Make(string who) => MarkOf(who, m => Covered(at, m));
        return new RunCommand.Sign(at, Make(person), beside is null ? null : Make(beside));
    }

    public Mark MarkOf(string person, Func<Mark, byte[]> covered)
    {
        Person who = Shop.People[person];
        Mark unsigned = new(who.Id, who.Name, Moment.Now.ToUniversalTime(), "");
        SigningResult made = PersonKeys.TrySign(who, RigShop.PinOf(person), covered(unsigned));
        return unsigned with { Signature = Convert.ToBase64String(((SigningResult.Made)made).Signature.AsSpan()) };
    }

    public Prompt Prompt(string place) => Prompter.At(State, Shop, At(place));

    public StepRecord Record(string place) => State.Find(At(place))!;

    public StepStanding Standing(string place) => State.StandingOf(At(place));

    public StepView View(string place) => Outlook.ViewOf(At(place));

    public StepPhase Phase(string place) => Phase(At(place));

    public StepPhase Phase(At at) => RunMachines.PhaseOf(State, Outlook, at);

    public ValueRecord Value(string characteristic, string position = "head") =>
        State.Value(characteristic, Plan.TryPosition(position, out int index) ? index : Runs.At.Head)!;

    /// <summary>The number that a cut is to be cut to now.</summary>
    public string Target(string place) => Prompt(place).Target?.Show.ToString() ?? "nothing";

    private string StoryOf(RunCommand command)
    {
        string name = command.GetType().Name;
        At? at = command switch
        {
            RunCommand.Enter c => c.At,
            RunCommand.Correct c => c.At,
            RunCommand.LiftToMeasure c => c.At,
            RunCommand.EndCut c => c.At,
            RunCommand.TakeWay c => c.At,
            RunCommand.Sign c => c.At,
            RunCommand.LeaveOut c => c.At,
            _ => null,
        };
        string said = command switch
        {
            RunCommand.Enter c => c.Text,
            RunCommand.Correct c => c.Text,
            RunCommand.TakeWay c => c.Way,
            RunCommand.Sign c => c.Mark.Person,
            RunCommand.Report c => c.Change,
            _ => "",
        };
        bool isPlace =
            at is { } place
            && place.Step >= 0
            && place.Step < Plan.Steps.Count
            && place.Position >= Runs.At.Head
            && place.Position < Plan.Positions.Count;
        return $"{name} {(isPlace ? Plan.NameOf(at!.Value) : "")}: {said}";
    }

    private byte[] Covered(At at, Mark mark) =>
        Plan.Steps[at.Step].Work is StepWork.Sign { Meaning: SignMeanings.Released }
            ? SignedBytes.OfRelease(State, at, mark, Moment.LastDigest)
            : SignedBytes.OfStage(State, at, mark);

    private static RunEvent Unreadable(Json map) =>
        throw new Xunit.Sdk.XunitException($"Not read back: {Encoding.UTF8.GetString(CanonicalJson.Write(map))}");
}
