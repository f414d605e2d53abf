using ProcRunner.Quantities;
using ProcRunner.Shop;

namespace ProcRunner.Lessons;

/// <summary>
/// How a procedure is practised on a head: the heads that come in, what readings and steps are on the practice head, how
/// the shop's gauges and tools behave. Read from a file under procedures/practice/. Names are checked when it is bound.
/// </summary>
public sealed record PracticeSetup
{
    /// <summary>Short name.</summary>
    public required string Name { get; init; }

    /// <summary>In words.</summary>
    public required string Title { get; init; }

    /// <summary>Name of the procedure.</summary>
    public required string Procedure { get; init; }

    /// <summary>Name of the head spec.</summary>
    public required string Head { get; init; }

    /// <summary>The heads as they come in.</summary>
    public required TruthTable Heads { get; init; }

    /// <summary>New parts, by what is fitted: valve, guide, insert, spring, pre-chamber.</summary>
    public required IReadOnlyDictionary<string, TruthTable> Parts { get; init; }

    /// <summary>Errors of tools and hands, by name.</summary>
    public required IReadOnlyDictionary<string, Quantity> Tools { get; init; }

    /// <summary>Readings.</summary>
    public required IReadOnlyList<BoundReading> Readings { get; init; }

    /// <summary>Steps that work on the head.</summary>
    public required IReadOnlyList<BoundWork> Works { get; init; }

    /// <summary>Ways on that work on the head when they are taken.</summary>
    public required IReadOnlyList<BoundWork> Ways { get; init; }

    /// <summary>Inspections.</summary>
    public required IReadOnlyList<BoundFinding> Findings { get; init; }

    /// <summary>How the model operator decides, by the decision's subject.</summary>
    public required IReadOnlyDictionary<string, IReadOnlyList<ChoiceRule>> Decisions { get; init; }

    /// <summary>
    /// How far out of its limits the shop concedes a value where no rework helps, by the value's name; what isn't named here
    /// is never conceded.
    /// </summary>
    public IReadOnlyDictionary<string, Quantity> Concedes { get; init; } = new Dictionary<string, Quantity>();

    /// <summary>True when the model operator ends a cut as soon as a reading is within its window, rather than at the aim.</summary>
    public bool EndsCutsInWindow { get; init; }

    /// <summary>The gauges.</summary>
    public required IReadOnlyList<GaugeCharacter> Gauges { get; init; }

    /// <summary>The machine's readout.</summary>
    public required Readout Readout { get; init; }
}
