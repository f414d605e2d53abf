using ProcRunner.Runs.Prompts;
using ProcRunner.Runs.Tests.Properties;

namespace ProcRunner.Runs.Tests;

/// <summary>Brings a run of <see cref="SmallWork"/> to where a test begins.</summary>
internal static class SmallRun
{
    /// <summary>Careful work until a step is open.</summary>
    public static void Until(this Rig rig, string place)
    {
        rig.Do(
            new RunCommand.ChooseLimit("stem height", null, RigShop.Q("1.5 in"), null, RigShop.Q("1.6 in"), "builder")
        );
        for (int i = 0; i < 100 && rig.View(place) != StepView.Open; i++)
        {
            rig.Next();
        }

        Assert.Equal(StepView.Open, rig.View(place));
    }

    /// <summary>One careful entry where the run is.</summary>
    public static void Next(this Rig rig) =>
        rig.Do(GoodEntry.For(rig, Prompter.Next(rig.State) ?? throw new Xunit.Sdk.XunitException("nothing is open")));

    /// <summary>Careful work to the release.</summary>
    public static void ToRelease(this Rig rig)
    {
        for (int i = 0; i < 200 && rig.State.Standing == JobStanding.Open; i++)
        {
            rig.Next();
        }

        Assert.Equal(JobStanding.Released, rig.State.Standing);
    }
}
