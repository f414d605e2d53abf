using ProcRunner.Lessons;
using ProcRunner.Practice.Bindings;
using ProcRunner.Problems;
using ProcRunner.Procedures;
using ProcRunner.Procedures.Checks;
using ProcRunner.Runs;
using ProcRunner.Testing;
using ProcRunner.Yaml;

namespace ProcRunner.Practice.Tests;

/// <summary>The procedure, head spec and practice setup that come with the program.</summary>
internal static class Demo
{
    public static Binding Binding { get; } = Bind();

    public static PracticeSetup Setup => Binding.Setup;

    private static Binding Bind()
    {
        string folder = RepoRoot.PathOf("procedures");
        Loaded<Procedure> procedure = ProcedureFile.Open(Path.Combine(folder, "two-valve-iron.yaml"));
        Loaded<HeadSpec> head = HeadSpecFile.Open(Path.Combine(folder, "heads", "pump-four.yaml"));
        Loaded<PracticeSetup> setup = PracticeFile.OpenSetup(
            Path.Combine(folder, "practice", "two-valve-iron-pump-four.yaml")
        );
        Problem[] problems = [.. procedure.Problems, .. head.Problems, .. setup.Problems];
        Assert.True(problems.Length == 0, string.Join('\n', problems.AsEnumerable()));
        Assert.Empty(PlanCheck.Join(procedure.Value!, head.Value!, "head"));
        (Binding? binding, IReadOnlyList<Problem> unbound) = Bindings.Binding.Of(
            new Plan(procedure.Value!, head.Value!),
            setup.Value!
        );
        Assert.True(unbound.Count == 0, string.Join('\n', unbound));
        return binding!;
    }
}
