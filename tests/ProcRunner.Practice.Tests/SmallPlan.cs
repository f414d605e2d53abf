using System.Text;
using ProcRunner.Lessons;
using ProcRunner.Procedures;
using ProcRunner.Procedures.Checks;
using ProcRunner.Runs;
using ProcRunner.Yaml;

namespace ProcRunner.Practice.Tests;

/// <summary>A small procedure, head and setup of a test's own, from their texts. All invented.</summary>
internal static class SmallPlan
{
    /// <summary>The three bound together; anything wrong with them fails the test.</summary>
    public static Bindings.Binding Bind(string procedure, string head, string setup)
    {
        HeadSpec spec = Good(HeadSpecFile.Load("head", Encoding.UTF8.GetBytes(head)));
        Procedure steps = Good(ProcedureFile.Load("procedure", Encoding.UTF8.GetBytes(procedure)));
        PracticeSetup practice = Good(PracticeFile.LoadSetup("setup", Encoding.UTF8.GetBytes(setup)));
        IReadOnlyList<Problems.Problem> unjoined = PlanCheck.Join(steps, spec, "head");
        Assert.True(unjoined.Count == 0, string.Join('\n', unjoined));
        (Bindings.Binding? binding, IReadOnlyList<Problems.Problem> problems) = Bindings.Binding.Of(
            new Plan(steps, spec),
            practice
        );
        Assert.True(problems.Count == 0, string.Join('\n', problems));
        return binding!;
    }

    private static T Good<T>(Loaded<T> loaded)
        where T : class
    {
        Assert.True(loaded.Problems.Count == 0, string.Join('\n', loaded.Problems));
        return loaded.Value!;
    }
}
