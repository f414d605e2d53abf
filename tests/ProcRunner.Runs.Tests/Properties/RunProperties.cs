using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using ProcRunner.Runs.Prompts;

namespace ProcRunner.Runs.Tests.Properties;

/// <summary>
/// What holds whatever anybody does. PROCRUNNER_RUNS sets how many random runs each property makes.
/// </summary>
public sealed class RunProperties
{
    private static readonly Plan Small = Rig.PlanOf(SmallWork.Procedure, SmallWork.Head);

    private static int Count =>
        int.TryParse(
            Environment.GetEnvironmentVariable("PROCRUNNER_RUNS"),
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out int runs
        )
            ? runs
            : 40;

    [Fact]
    public void Replaying_the_stored_entries_gives_the_live_state() =>
        Check(
            (turns, rig) =>
            {
                Play(turns, rig, static (_, _) => { });
                Assert.Equal(StateDump.Of(rig.State), StateDump.Of(rig.Replay()));
            }
        );

    [Fact]
    public void No_signature_stands_over_an_open_or_stale_gate_and_no_release_over_a_value_that_isnt_current_good_and_covered() =>
        Check(
            (turns, rig) =>
            {
                Oracle oracle = new(Small);
                Play(turns, rig, (r, before) => Judge(oracle, r, before));
                Finish(rig, (r, before) => Judge(oracle, r, before));
                Assert.True(oracle.Wrong.Count == 0, string.Join('\n', oracle.Wrong));
                Assert.True(oracle.Released || rig.State.Standing == JobStanding.Scrapped);
            }
        );

    [Fact]
    public void Deciding_never_throws_and_changes_nothing() =>
        Check(
            (turns, rig) =>
            {
                foreach (Turn turn in turns)
                {
                    RunCommand command = AnyCommand.Of(rig, turn);
                    string before = StateDump.Of(rig.State);
                    Decision decision = RunDecider.Decide(rig.State, rig.Shop, command, rig.Moment);
                    Assert.Equal(before, StateDump.Of(rig.State));
                    if (decision is Decision.Refused refused)
                    {
                        Assert.NotEqual("", refused.Why);
                    }

                    rig.Try(command);
                }
            }
        );

    [Fact]
    public void What_completes_a_step_adds_nothing_a_second_time() =>
        Check(
            (turns, rig) =>
            {
                foreach (Turn turn in turns)
                {
                    RunCommand command = AnyCommand.Of(rig, turn);
                    if (
                        rig.Try(command) is Decision.Accepted
                        && Place(command) is { } at
                        && rig.Phase(at) == StepPhase.Done
                    )
                    {
                        Assert.IsType<Decision.Refused>(RunDecider.Decide(rig.State, rig.Shop, command, rig.Moment));
                    }
                }
            }
        );

    /// <summary>The same reading twice is never questioned twice, and a question leaves every value as it was.</summary>
    [Fact]
    public void A_question_about_a_reading_changes_no_value_and_isnt_repeated()
    {
        int asked = 0;
        Check(
            (turns, rig) =>
            {
                foreach (Turn turn in turns)
                {
                    RunCommand command = AnyCommand.Of(rig, turn);
                    string values = StateDump.OfValues(rig.State);
                    if (IsDoubted(rig.Try(command)))
                    {
                        asked++;
                        Assert.Equal(values, StateDump.OfValues(rig.State));
                        Assert.False(IsDoubted(rig.Try(command)), "the question is repeated");
                    }
                }
            }
        );
        Assert.True(asked > 0, "no run raised a question about a reading");
    }

    [Fact]
    public void Every_change_of_phase_is_a_transition_of_the_machines() =>
        Check(
            (turns, rig) =>
            {
                PhaseWatch watch = new(Small);
                Play(turns, rig, (r, _) => watch.Look(r.State));
                Finish(rig, (r, _) => watch.Look(r.State));
                Assert.True(watch.Wrong.Count == 0, string.Join('\n', watch.Wrong));
            }
        );

    [Fact]
    public void There_is_no_dead_end() =>
        Check(
            (turns, rig) =>
            {
                foreach (Turn turn in turns)
                {
                    rig.Try(AnyCommand.Of(rig, turn));
                    if (rig.State.Standing == JobStanding.Open)
                    {
                        At next = Assert.NotNull(Prompter.Next(rig.State));
                        Assert.True(
                            Sensible(rig, next).Any(c => Goes(rig, c)),
                            $"nothing is accepted at {Small.NameOf(next)}"
                        );
                    }
                }

                Finish(rig, static (_, _) => { });
            }
        );

    /// <summary>Commands that go on with a step, one of which must be taken.</summary>
    private static IEnumerable<RunCommand> Sensible(Rig rig, At at)
    {
        yield return Settled(rig, GoodEntry.For(rig, at));
        foreach (var way in Prompter.At(rig.State, rig.Shop, at).WaysOn)
        {
            yield return GoodEntry.Way(rig, at, way);
        }
    }

    // A reading that is questioned goes on by being read a second time.
    private static bool Goes(Rig rig, RunCommand command)
    {
        if (IsDoubted(RunDecider.Decide(rig.State, rig.Shop, command, rig.Moment)))
        {
            rig.Try(command);
        }

        return RunDecider.Decide(rig.State, rig.Shop, command, rig.Moment)
            is Decision.Accepted { Events: not [RunEvent.EntryQuestioned] };
    }

    private static bool IsDoubted(Decision decision) =>
        decision is Decision.Accepted { Events: [RunEvent.EntryQuestioned { IsOfReading: true }] };

    private static void Play(Turn[] turns, Rig rig, Action<Rig, int> each)
    {
        each(rig, 0);
        foreach (Turn turn in turns)
        {
            int before = rig.Trail.Count;
            rig.Try(AnyCommand.Of(rig, turn));
            each(rig, before);
        }
    }

    /// <summary>From wherever the run is, careful work brings it to release.</summary>
    private static void Finish(Rig rig, Action<Rig, int> each)
    {
        const int Most = 200;
        for (int i = 0; i < Most && rig.State.Standing is JobStanding.Open or JobStanding.Held; i++)
        {
            int before = rig.Trail.Count;
            RunCommand command =
                rig.State.Standing == JobStanding.Held
                    ? new RunCommand.TakeUp()
                    : GoodEntry.For(rig, Assert.NotNull(Prompter.Next(rig.State)));
            Decision decision = rig.Try(Settled(rig, command));
            Assert.True(decision is Decision.Accepted, $"{command}: {(decision as Decision.Refused)?.Why}");
            each(rig, before);
        }

        Assert.True(
            rig.State.Standing is JobStanding.Released or JobStanding.Scrapped,
            $"not released after {Most} more entries; at {Small.NameOf(Prompter.Next(rig.State) ?? default)}"
        );
    }

    // A limit that nobody has chosen yet is chosen first.
    private static RunCommand Settled(Rig rig, RunCommand command) =>
        command is RunCommand.Enter { At: var at }
        && Prompter.At(rig.State, rig.Shop, at).NoLimits.StartsWith("no limit is known", StringComparison.Ordinal)
            ? new RunCommand.ChooseLimit("stem height", null, RigShop.Q("1.5 in"), null, RigShop.Q("1.6 in"), "builder")
            : command;

    private static void Judge(Oracle oracle, Rig rig, int before)
    {
        for (int i = before; i < rig.Trail.Count; i++)
        {
            oracle.Take(Rig.Events(Small, rig.Trail[i]));
        }
    }

    private static At? Place(RunCommand command) =>
        command switch
        {
            RunCommand.Enter c => c.At,
            RunCommand.EndCut c => c.At,
            RunCommand.TakeWay c => c.At,
            RunCommand.Sign c => c.At,
            RunCommand.LeaveOut c => c.At,
            RunCommand.TakeBack c => c.At,
            _ => null,
        };

    private static void Check(Action<Turn[], Rig> holds)
    {
        Gen<byte> dice = Gen.Choose(0, 255).Select(n => (byte)n);
        Gen<Turn> turn = from what in dice from place in dice from how in dice select new Turn(what, place, how);
        Gen<Turn[]> turns = Gen.Choose(1, 140).SelectMany(n => turn.ArrayOf(n));
        Arbitrary<Turn[]> arbitrary = Arb.From(turns, static run => Shorter(run));
        Prop.ForAll(arbitrary, turns => Told(turns, holds)).Check(Config.QuickThrowOnFailure.WithMaxTest(Count));
    }

    // Careful work as far as anywhere in the procedure, so that the dice fall at its end as often as at its beginning.
    private static void Begin(Rig rig, int entries)
    {
        for (
            int i = 0;
            i < entries && Prompter.Next(rig.State) is { } next && rig.State.Standing == JobStanding.Open;
            i++
        )
        {
            rig.Try(Settled(rig, GoodEntry.For(rig, next)));
        }
    }

    // A run that fails tells its story.
    private static void Told(Turn[] turns, Action<Turn[], Rig> holds)
    {
        Rig rig = new(Small, RigShop.WithTurns);
        try
        {
            Begin(rig, turns[0].How % 60);
            holds(turns, rig);
        }
        catch (Exception failure)
        {
            throw new Xunit.Sdk.XunitException($"{failure}\nTHE RUN:{rig.Story}\nTHE END", failure);
        }
    }

    private static IEnumerable<Turn[]> Shorter(Turn[] run)
    {
        for (int size = run.Length / 2; size >= 1 && run.Length > 1; size /= 2)
        {
            for (int at = 0; at + size <= run.Length; at += size)
            {
                yield return [.. run[..at], .. run[(at + size)..]];
            }
        }
    }
}
