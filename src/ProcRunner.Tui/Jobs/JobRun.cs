using System.Collections.Immutable;
using ProcRunner.People;
using ProcRunner.Procedures;
using ProcRunner.Runs;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Text;
using ProcRunner.Trail;
using ProcRunner.Tui.Shell;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Jobs;

/// <summary>
/// An open job: decides a command, writes what came of it, and only then lets the run know. Whatever front drives it, the
/// state never runs ahead of the disk.
/// </summary>
internal sealed class JobRun
{
    private readonly Func<ShopState> _shop;
    private readonly Func<string, EntryDraft, AppendResult> _append;
    private readonly TimeProvider _time;
    private readonly PinGate _pins;

    /// <summary>A job over a run and the trail behind it.</summary>
    /// <param name="shop">The shop as it is now.</param>
    /// <param name="append">Writes an entry to a job's trail, durably, before it returns.</param>
    /// <param name="time">The clock.</param>
    /// <param name="state">The run.</param>
    /// <param name="last">Digest of the trail's last entry.</param>
    /// <param name="person">Id of the person at work.</param>
    /// <param name="lastEvents">What the last entry says.</param>
    /// <param name="pins">Where PINs are tried.</param>
    public JobRun(
        Func<ShopState> shop,
        Func<string, EntryDraft, AppendResult> append,
        TimeProvider time,
        RunState state,
        Digest last,
        string person,
        IReadOnlyList<RunEvent> lastEvents,
        PinGate pins
    )
    {
        (_shop, _append, _time, _pins, State, Last) = (shop, append, time, pins, state, last);
        (Person, LastEvents) = (person, lastEvents);
    }

    private JobRun(
        LocalStore store,
        TimeProvider time,
        RunState state,
        Digest last,
        string person,
        IReadOnlyList<RunEvent> lastEvents
    )
        : this(() => store.Shop, store.Append, time, state, last, person, lastEvents, PinGate.Of(store, time)) =>
        Store = store.Reader;

    /// <summary>The store, for what has to do with other jobs; null where there is none.</summary>
    public StoreReader? Store { get; }

    /// <summary>Told what was recorded, after the run knows it; null: nobody is.</summary>
    public Action<IReadOnlyList<RunEvent>>? Recorded { get; set; }

    /// <summary>Told what was refused; null: nobody is.</summary>
    public Action<RunCommand>? Refused { get; set; }

    /// <summary>The run.</summary>
    public RunState State { get; }

    /// <summary>Digest of the last entry.</summary>
    public Digest Last { get; private set; }

    /// <summary>What the last entry says.</summary>
    public IReadOnlyList<RunEvent> LastEvents { get; private set; }

    /// <summary>Id of the person at work.</summary>
    public string Person { get; private set; }

    /// <summary>The proof code once the job is closed out; null before.</summary>
    public ProofCode? Proof =>
        State.Standing is JobStanding.Released or JobStanding.Scrapped ? ProofCode.Of(Last) : null;

    /// <summary>The shop.</summary>
    public ShopState Shop => _shop();

    /// <summary>The day at the machine.</summary>
    public DateOnly Today => DateOnly.FromDateTime(_time.GetLocalNow().DateTime);

    /// <summary>Opens a new job in the store; null with the reason when it can't be.</summary>
    public static (JobRun? Run, string Fault) Begin(
        LocalStore store,
        TimeProvider time,
        PlanTexts texts,
        JobHeader header,
        string person,
        OtherJobs? others = null
    )
    {
        // Nothing that is opened in a practice room can ever be released.
        header = header with
        {
            Practice = header.Practice || PracticeRoom.Is(store.Shop),
        };
        RunState state = new(texts.Plan, "");
        Decision decision = RunDecider.Decide(
            state,
            store.Shop,
            new RunCommand.OpenJob(header) { Earlier = others?.Earlier, Linked = others?.Linked },
            new Moment(time.GetLocalNow(), person, Digest.Zero.ToString())
        );
        if (decision is not Decision.Accepted accepted)
        {
            return (null, ((Decision.Refused)decision).Why);
        }

        EntryDraft draft = new(person, [.. accepted.Events.Select(e => RunEventFormat.Write(texts.Plan, e))]);
        AppendResult result = store.OpenJob(header.Stamp, [texts.ProcedureText, texts.HeadText], draft);
        switch (result)
        {
            case AppendResult.Written written:
                state = new RunState(texts.Plan, written.Entry.Of);
                state.Apply(written.Entry.Sequence, accepted.Events);
                return (new JobRun(store, time, state, written.Digest, person, accepted.Events), "");
            case AppendResult.Failed failed:
                return (null, failed.Why);
            default:
                return (null, ((AppendResult.Refused)result).Why);
        }
    }

    /// <summary>
    /// Opens a job that is in the store, in the hands it was last in; null with the reason when its trail doesn't hold.
    /// </summary>
    /// <param name="store">The store.</param>
    /// <param name="time">The clock.</param>
    /// <param name="jobId">The job.</param>
    /// <param name="person">Id of the person at work where the trail names none who is still here.</param>
    public static (JobRun? Run, string Fault) Resume(LocalStore store, TimeProvider time, string jobId, string person)
    {
        (JobReading? job, string fault) = JobReading.Read(store.Reader, jobId);
        if (job is null)
        {
            return (null, fault);
        }

        // Whoever takes the mark out of a practice trail gets no job from it that could be released.
        if (PracticeRoom.Is(store.Shop) && job.State.Job is not { Practice: true })
        {
            return (null, "It stands in a practice room without the mark of practice: its trail was altered.");
        }

        string last = job.State.Worker.Length > 0 ? job.State.Worker : job.Entries[^1].Entry.Operator;
        bool isHere = store.Shop.People.TryGetValue(last, out Person? known) && known.RetiredAt is null;
        return (new JobRun(store, time, job.State, job.Last, isHere ? last : person, job.LastEvents), "");
    }

    /// <summary>Somebody is at the machine while the job can't be handed over, being on hold: their entries are theirs.</summary>
    public void StandIn(string person) => Person = person;

    /// <summary>Decides a command and writes what comes of it.</summary>
    public JobAnswer Do(RunCommand command)
    {
        Decision decision = RunDecider.Decide(State, _shop(), command, Now());
        if (decision is Decision.Refused refused)
        {
            Refused?.Invoke(command);
            return new JobAnswer.Refused(refused.Why, refused.WhatToDo);
        }

        IReadOnlyList<RunEvent> events = ((Decision.Accepted)decision).Events;
        ImmutableArray<Json.Map> maps = [.. events.Select(e => RunEventFormat.Write(State.Plan, e))];
        switch (_append(State.JobId, new EntryDraft(Person, maps, AnchorOf(events))))
        {
            case AppendResult.Written written:
                State.Apply(written.Entry.Sequence, events);
                Last = written.Digest;
                LastEvents = events;
                Person = State.Worker.Length > 0 ? State.Worker : Person;
                Recorded?.Invoke(events);
                return new JobAnswer.Recorded(events);
            case AppendResult.Failed failed:
                return new JobAnswer.NotWritten(failed.Why);
            case AppendResult.Refused shut:
                return new JobAnswer.Refused(shut.Why, []);
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    /// <summary>Signs a stage, or the release, with a person's PIN; a trainee's with a lead's beside it.</summary>
    public JobAnswer Sign(At at, string person, string pin, string? beside, string? besidePin)
    {
        (Mark? mark, string fault) = MarkOf(person, pin, m => Covered(at, m));
        if (mark is null)
        {
            return new JobAnswer.Refused(fault, []);
        }

        Mark? second = null;
        if (beside is not null)
        {
            (second, fault) = MarkOf(beside, besidePin ?? "", m => Covered(at, m));
            if (second is null)
            {
                return new JobAnswer.Refused(fault, []);
            }
        }

        return Do(new RunCommand.Sign(at, mark, second));
    }

    /// <summary>Takes a way on that needs a lead: concession or scrap.</summary>
    public JobAnswer TakeWayByLead(At at, WayOn way, string reason, string lead, string pin)
    {
        string cleaned = SafeText.Clean(reason);
        (Mark? mark, string fault) = MarkOf(lead, pin, m => SignedBytes.OfWay(State, at, way.Kind, cleaned, m));
        return mark is null
            ? new JobAnswer.Refused(fault, [])
            : Do(new RunCommand.TakeWay(at, way.Text, cleaned, mark));
    }

    /// <summary>Writes down how this head goes out beside the other heads of the engine.</summary>
    public JobAnswer DecideHeads(bool together, string reason) =>
        Store is null
            ? new JobAnswer.Refused("There are no other jobs here.", [])
            : EngineHeads.Decide(Store, this, together, reason);

    private byte[] Covered(At at, Mark mark) =>
        State.Plan.Steps[at.Step].Work is StepWork.Sign { Meaning: SignMeanings.Released }
            ? SignedBytes.OfRelease(State, at, mark, Last.ToString())
            : SignedBytes.OfStage(State, at, mark);

    private (Mark? Mark, string Fault) MarkOf(string id, string pin, Func<Mark, byte[]> covered)
    {
        if (!_shop().People.TryGetValue(id, out Person? person) || person.RetiredAt is not null)
        {
            return (null, $"Nobody here is called {SafeText.Show(id)}.");
        }

        using UnlockedKey? key = _pins.TryUnlock(person, pin, out string fault);
        if (key is null)
        {
            return (null, fault);
        }

        DateTimeOffset now = _time.GetUtcNow();
        Mark unsigned = new(person.Id, person.Name, now.AddTicks(-(now.Ticks % TimeSpan.TicksPerMillisecond)), "");
        return (unsigned with { Signature = key.SignBase64(covered(unsigned)) }, "");
    }

    private Moment Now() => new(_time.GetLocalNow(), Person, Last.ToString());

    private static Anchor AnchorOf(IReadOnlyList<RunEvent> events)
    {
        foreach (RunEvent happened in events)
        {
            switch (happened)
            {
                case RunEvent.JobReleased or RunEvent.HeadScrapped:
                    return Anchor.ClosedOut;
                case RunEvent.SignedOff or RunEvent.Conceded:
                    return Anchor.SignedOff;
                case RunEvent.HandedOver:
                    return Anchor.HandedOver;
                default:
                    break;
            }
        }

        return Anchor.None;
    }
}
