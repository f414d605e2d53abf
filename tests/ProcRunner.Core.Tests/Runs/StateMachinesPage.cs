using System.Text;
using System.Xml.Linq;
using ProcRunner.Runs;
using Stateless;
using Stateless.Graph;

namespace ProcRunner.Core.Tests.Runs;

/// <summary>Writes docs/state-machines.md from the machines and from what their states and triggers say of themselves.</summary>
internal static class StateMachinesPage
{
    private static readonly Dictionary<string, string> Summaries = XDocument
        .Load(Path.ChangeExtension(typeof(RunMachines).Assembly.Location, ".xml"))
        .Descendants("member")
        .ToDictionary(m => m.Attribute("name")!.Value, m => m.Element("summary")?.Value.Trim() ?? "");

    /// <summary>The whole page.</summary>
    public static string Write()
    {
        StringBuilder page = new();
        page.Append(
            """
            # State machines

            What may be tried on a job, a stage and a step, and where it leads. This page is written from the machines
            themselves (src/ProcRunner.Core/Runs/RunMachines.cs); a test fails when the two differ. Those of job and step are
            asked before anything is decided. A text in square brackets is the guard that must hold, in the words in which a
            refusal names it. A small diamond is an outcome that depends on the entry: more to come, done, or out of spec.

            The machines hold no state. A job's state is what its trail says; the machines say what may be added to it.

            """
        );
        Add(page, "Job", RunMachines.JobMachine(static () => JobStanding.Open));
        Add(page, "Stage", RunMachines.StageMachine(static () => StagePhase.Waiting));
        Add(
            page,
            "Step",
            RunMachines.StepMachine(static () => StepPhase.Waiting, static () => true, static () => true)
        );
        return page.ToString();
    }

    private static void Add<TState, TTrigger>(StringBuilder page, string title, StateMachine<TState, TTrigger> machine)
        where TState : struct, Enum
        where TTrigger : struct, Enum
    {
        page.Append("\n## ").Append(title).Append("\n\n```mermaid\n");
        page.Append(Diagram(MermaidGraph.Format(machine.GetInfo()))).Append("\n```\n");
        AddTable<TState>(page, "state");
        AddTable<TTrigger>(page, "tried or happening");
    }

    /// <summary>The graph as the library writes it, without the empty brackets of outcomes that have no guard.</summary>
    private static string Diagram(string graph) =>
        graph
            .ReplaceLineEndings("\n")
            .Trim()
            .Replace(" []", "", StringComparison.Ordinal)
            .Replace("\t", "    ", StringComparison.Ordinal);

    private static void AddTable<T>(StringBuilder page, string heading)
        where T : struct, Enum
    {
        page.Append("\n| ").Append(heading).Append(" | meaning |\n| --- | --- |\n");
        foreach (string name in Enum.GetNames<T>())
        {
            page.Append("| ")
                .Append(name)
                .Append(" | ")
                .Append(Summaries[$"F:{typeof(T).FullName}.{name}"])
                .Append(" |\n");
        }
    }
}
