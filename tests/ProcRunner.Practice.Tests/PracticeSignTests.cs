using ProcRunner.Practice.Operators;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Shop;

namespace ProcRunner.Practice.Tests;

/// <summary>The word by which a rehearsal signs is worth nothing: it signs practice heads in a rehearsal and nothing else.</summary>
public class PracticeSignTests
{
    private static readonly string None = Trail.Digest.Zero.ToString();
    private static readonly DateTimeOffset Now = new(2026, 1, 5, 8, 0, 0, TimeSpan.Zero);
    private readonly Bindings.Binding _binding = SmallPlan.Bind(
        """
        procedure: small
        title: one reading (invented)
        revision: 1
        readings:
          margin: {of: position, measured-in: length, gauge: caliper, why: it holds}
        stages:
        - stage: work
          steps:
          - measure: margin
            window: none
          - sign: measured
          - sign: released
            signed-by: lead
        """,
        """
        head: small
        title: one cylinder (invented)
        revision: 1
        material: grey iron
        unit: mm
        positions: {cylinders: 1, kinds: [I], guide-angle: 0 deg}
        """,
        """
        practice: small on small
        title: one reading (invented)
        procedure: small
        head: small
        unit: mm
        readout: {unit: mm, step: 0.01}
        gauges: {C: {kind: caliper, resolution: 0.01, uncertainty: 0.01}}
        readings: {margin: margin}
        heads: {margin: 1}
        """
    );

    [Fact]
    public void In_a_rehearsal_a_practice_head_is_signed_and_released_by_a_word()
    {
        RunState state = Played(practice: true, PracticeShop.Sign);
        Assert.Equal(JobStanding.Released, state.Standing);
    }

    // A customer's job, decided as a rehearsal decides: the word is no signature.
    [Fact]
    public void A_job_that_isnt_practice_takes_no_word_for_a_signature() =>
        Assert.Equal(JobStanding.Open, Played(practice: false, PracticeShop.Sign).Standing);

    // A lesson's job, decided as the bench decides.
    [Fact]
    public void Outside_a_rehearsal_a_practice_head_takes_none_either() =>
        Assert.Equal(JobStanding.Open, Played(practice: true, signs: null).Standing);

    [Fact]
    public void Another_word_than_the_rehearsals_signs_nothing() =>
        Assert.Equal(JobStanding.Open, Played(practice: true, "another word").Standing);

    // Plays until something is refused or nothing is left.
    private RunState Played(bool practice, string? signs)
    {
        ShopState shop = PracticeShop.Of(_binding.Setup);
        RunState state = new(_binding.Plan, "practice");
        JobHeader header = new()
        {
            Stamp = "1001",
            ProcedureDigest = None,
            HeadDigest = None,
            Practice = practice,
        };
        RunCommand command = new RunCommand.OpenJob(header);
        for (int entry = 1; entry < 20; entry++)
        {
            Moment moment = new(Now, PracticeShop.Lead, None);
            if (RunDecider.DecideOnPractice(state, shop, command, moment, signs) is not Decision.Accepted accepted)
            {
                Assert.IsType<RunCommand.Sign>(command);
                break;
            }

            state.Apply(entry, accepted.Events);
            if (state.Standing != JobStanding.Open || Prompter.Next(state) is not { } at)
            {
                break;
            }

            command = Prompter.At(state, shop, at).Awaits switch
            {
                Awaited.Signature => new RunCommand.Sign(
                    at,
                    new Mark(PracticeShop.Lead, PracticeShop.Name, Now, PracticeShop.Sign),
                    null
                ),
                _ => new RunCommand.Enter(at, "1.00"),
            };
        }

        return state;
    }
}
