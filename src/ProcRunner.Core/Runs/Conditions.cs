using ProcRunner.Formulas;
using ProcRunner.Procedures;

namespace ProcRunner.Runs;

/// <summary>The conditions on which a procedure asks for steps, each once however many steps have it. Immutable.</summary>
internal sealed class Conditions
{
    private readonly Formula[] _all;
    private readonly int[][] _steps;
    private readonly bool[] _compares;
    private readonly int[][] _hearing;

    public Conditions(Procedure procedure)
    {
        _all =
        [
            .. procedure
                .Steps.Select(s => s.OnlyWhere)
                .OfType<Formula>()
                .DistinctBy(c => c.Text, StringComparer.Ordinal),
        ];
        _steps =
        [
            .. _all.Select(c => procedure.Steps.Where(s => s.OnlyWhere?.Text == c.Text).Select(s => s.Index).ToArray()),
        ];
        _compares = [.. _all.Select(c => c.Names.Any(ReadNames.Compares))];
        _hearing = [.. procedure.Steps.Select(Reading)];
    }

    /// <summary>How many there are.</summary>
    public int Count => _all.Length;

    /// <summary>One of them.</summary>
    public Formula this[int condition] => _all[condition];

    /// <summary>Steps that are asked for on a condition, in order.</summary>
    public ReadOnlySpan<int> StepsOn(int condition) => _steps[condition];

    /// <summary>Conditions that read what a step gives, decides or finds, now or as it was found.</summary>
    public ReadOnlySpan<int> Hearing(int step) => _hearing[step];

    /// <summary>True for a condition that at one position reads what is so at others.</summary>
    public bool Compares(int condition) => _compares[condition];

    private int[] Reading(Step step)
    {
        string[] heard = step.Work switch
        {
            StepWork.Decide => ["decided." + step.Subject],
            StepWork.Inspect => ["found." + step.Subject],
            _ => [.. step.Gives, .. step.Gives.Select(ReadNames.AsFound)],
        };
        return
        [
            .. Enumerable
                .Range(0, _all.Length)
                .Where(c => _all[c].Names.Any(name => heard.Contains(ReadNames.Base(name)))),
        ];
    }
}
