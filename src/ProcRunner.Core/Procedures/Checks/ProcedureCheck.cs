using ProcRunner.Problems;

namespace ProcRunner.Procedures.Checks;

/// <summary>Checks of a procedure as a whole, wherever it came from. One that is on its own: no head spec is asked.</summary>
public static class ProcedureCheck
{
    /// <summary>Everything that is wrong with how the parts go together.</summary>
    /// <param name="procedure">The procedure.</param>
    /// <param name="places">Where its formulas and readings stand.</param>
    /// <param name="file">The file it was read from.</param>
    /// <param name="ordered">False when a step is missing from the procedure, so that its order says nothing.</param>
    /// <param name="broken">Names that something was already said about.</param>
    public static IReadOnlyList<Problem> Run(
        Procedure procedure,
        SourcePlaces places,
        string file,
        bool ordered,
        IReadOnlySet<string> broken
    )
    {
        List<Problem> problems = [];
        problems.AddRange(new ReachCheck(procedure, places).Run());
        problems.AddRange(new CircleCheck(procedure, places, file).Run());
        if (ordered)
        {
            problems.AddRange(new OrderCheck(procedure, places, broken).Run());
            problems.AddRange(SignOffCheck.Run(procedure, file));
        }

        return problems;
    }
}
