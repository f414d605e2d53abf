using ProcRunner.Testing;

namespace ProcRunner.Core.Tests.Runs;

public class StateMachinesPageTests
{
    [Fact]
    public void The_page_of_the_state_machines_shows_the_machines() =>
        Golden.MatchFile(StateMachinesPage.Write(), "docs/state-machines.md");
}
