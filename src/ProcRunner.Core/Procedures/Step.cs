using ProcRunner.Formulas;
using ProcRunner.Problems;

namespace ProcRunner.Procedures;

/// <summary>One thing to do in a stage, for the head or for each position.</summary>
public sealed record Step
{
    /// <summary>Place in the procedure's order, from 0 over all stages.</summary>
    public required int Index { get; init; }

    /// <summary>Index of the stage it belongs to.</summary>
    public required int StageIndex { get; init; }

    /// <summary>Name, unique in its stage; what it is about unless the file names it.</summary>
    public required string Name { get; init; }

    /// <summary>Stage and name, unique in the procedure: <c>seat cut / recession</c>.</summary>
    public required string FullName { get; init; }

    /// <summary>What the kind's key says: the instruction, the part, the reading.</summary>
    public required string Subject { get; init; }

    /// <summary>What it asks for.</summary>
    public required StepWork Work { get; init; }

    /// <summary>True for one on the head, false for one at each position.</summary>
    public required bool OfHead { get; init; }

    /// <summary>The kinds of position it is for; empty: all.</summary>
    public IReadOnlyList<string> Kinds { get; init; } = [];

    /// <summary>The condition under which it is asked for; null: always.</summary>
    public Formula? OnlyWhere { get; init; }

    /// <summary>How to do it, shown with the step.</summary>
    public string Say { get; init; } = "";

    /// <summary>Why it matters.</summary>
    public string Why { get; init; } = "";

    /// <summary>Data and characteristics on which its being done rests, besides those of what it reads.</summary>
    public IReadOnlyList<string> RestsOn { get; init; } = [];

    /// <summary>What it moves when it is done.</summary>
    public IReadOnlyList<Move> Moves { get; init; } = [];

    /// <summary>Numbers worked out for it and shown with it.</summary>
    public IReadOnlyList<ShownNumber> Shows { get; init; } = [];

    /// <summary>Cautions shown with it.</summary>
    public IReadOnlyList<Caution> Cautions { get; init; } = [];

    /// <summary>Dispositions of a result out of spec.</summary>
    public IReadOnlyList<WayOn> WaysOn { get; init; } = [];

    /// <summary>True when the operator may leave it out with a reason ("not for this head").</summary>
    public bool MayBeLeftOut { get; init; }

    /// <summary>The kind of work it is, which a head spec may forbid; null: none.</summary>
    public string? IsWork { get; init; }

    /// <summary>Where it stands in the file.</summary>
    public Place Source { get; init; }

    /// <summary>What it takes, or null when it reads nothing.</summary>
    public Taking? Taking =>
        Work switch
        {
            StepWork.Measure measure => measure.Taking,
            StepWork.Cut cut => cut.Taking,
            StepWork.Zero zero => zero.From,
            _ => null,
        };

    /// <summary>Every characteristic its reading gives a value to, worked-out ones included.</summary>
    public IEnumerable<string> Gives =>
        Taking is { } taking ? [taking.Characteristic, .. taking.WorksOut.Select(w => w.Name)] : [];
}
