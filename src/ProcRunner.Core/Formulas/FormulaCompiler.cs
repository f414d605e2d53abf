namespace ProcRunner.Formulas;

/// <summary>Reads a formula's text and proves it before any value is known.</summary>
public static class FormulaCompiler
{
    /// <summary>The formula, or every problem that its text holds. Never throws, whatever the text.</summary>
    /// <param name="text">
    /// At most 500 characters, with at most 32 parentheses open at once and 32 signs in a row.
    /// </param>
    /// <param name="names">The names that it may read.</param>
    /// <param name="wanted">The type that is needed where it stands; null if any will do.</param>
    /// <param name="cancellation">Given on to the parser.</param>
    public static FormulaResult Compile(
        string text,
        IFormulaNames names,
        FormulaType? wanted,
        CancellationToken cancellation = default
    )
    {
        List<FormulaProblem> problems = [];
        if (text.Length > FormulaShape.LongestText)
        {
            FormulaSpan rest = new(FormulaShape.LongestText, text.Length);
            string message = $"a formula has at most {FormulaShape.LongestText} characters; split it into named ones";
            return new FormulaResult.Refused([FormulaProblem.At(text, rest, FormulaFault.TooLarge, message)]);
        }

        IReadOnlyList<FormulaToken> tokens = FormulaScanner.Scan(text, problems);
        if (problems.Count == 0)
        {
            tokens = FormulaShape.Check(text, tokens, problems);
        }

        FormulaChecker checker = new(tokens, names, new FormulaCheckNotes(text, tokens, problems));
        if (problems.Count > 0 || FormulaGrammar.Parse(text, tokens, problems, cancellation) is not { } tree)
        {
            // What can't be read as a whole is still searched for names and functions that don't exist.
            checker.ReportUnknown();
            return Refused(problems.DistinctBy(problem => problem.Position));
        }

        FormulaNode node = checker.Check(tree, wanted);
        return problems.Count == 0 && node.Type is { } type
            ? new FormulaResult.Compiled(new Formula(text, tokens, node, type, FormulaClosures.Of(node)))
            : Refused(problems);
    }

    private static FormulaResult.Refused Refused(IEnumerable<FormulaProblem> problems) =>
        new([.. problems.OrderBy(problem => problem.Position)]);
}
