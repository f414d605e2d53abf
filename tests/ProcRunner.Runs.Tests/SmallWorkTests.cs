namespace ProcRunner.Runs.Tests;

public sealed class SmallWorkTests
{
    [Fact]
    public void It_loads()
    {
        Rig rig = new(SmallWork.Procedure, SmallWork.Head);
        Assert.Equal("teardown / thickness", rig.Plan.NameOf(rig.Outlook.Open[0]));
    }
}
