namespace ProcRunner.Runs.Tests;

/// <summary>A cut goes on to its aim whatever was read, and no further.</summary>
public sealed class CutGoesOnTests
{
    // 0.0468 with aim 0.052: 0.0052 left, of which the allowance keeps 0.005 and the readout shows none of the 0.0002. Read again
    // and again as the same, it must still go on: it is its approach.
    [Fact]
    public void Less_than_a_step_before_its_approach_the_cut_goes_to_the_aim()
    {
        Rig rig = CutWork.Make();
        rig.Zero("1I", "0.0468");

        Assert.Equal("0.0050 in", rig.Target("cut 1I"));
        Assert.False(rig.Prompt("cut 1I").Target!.StopsShort);
        rig.Pass("1I");
        Assert.Equal(Verdict.In, rig.Read("cut 1I", "0.0518").Judgement.Verdict);
        Assert.Equal(StepView.Done, rig.View("cut 1I"));
    }

    // A surface that its own cut takes off: 0.006 of 0.007 was cut and measures 0.0045, which disagrees. Touched anew, it lies
    // 0.0045 deep already, so 0.0025 is left; counted from 0 the whole 0.007 would come off a second time.
    [Theory]
    [InlineData("seat", "0.0025 in")]
    [InlineData("face", "0.0070 in")] // a face that isn't cut stays where it is
    public void Zeroed_anew_on_the_surface_that_it_cuts_the_rest_alone_is_left(string touched, string left)
    {
        Rig rig = new(
            Work.Procedure(
                "depth: {of: position, measured-in: length, rests-on: [seat], why: it matters}",
                $"- zero: {touched}\n  rests-on: [set-up]\n- cut: depth\n  stop-short: \"'0.001 in'\"\n  agree-within: \"'0.001 in'\"\n  moves: [seat]"
            ),
            Work.Head("depth: {low: 0.006, aim: 0.007, high: 0.008, origin: maker}")
        );
        rig.Enter($"{touched} 1I", "0");
        Assert.Equal("0.0060 in", rig.Target("depth 1I"));
        rig.Enter("depth 1I", "0.006");

        Assert.True(rig.Read("depth 1I", "0.0045").Disagrees);
        rig.Enter($"{touched} 1I", "0");

        decimal target = rig.Prompt("depth 1I").Target!.Show.Value;
        decimal allowance = rig.Prompt("depth 1I").Target!.StopsShort ? 0.001m : 0;
        Assert.Equal(RigShop.Q(left).Value, target + allowance);
    }
}
