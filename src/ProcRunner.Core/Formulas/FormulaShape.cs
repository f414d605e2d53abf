namespace ProcRunner.Formulas;

/// <summary>Holds that values and operators take turns and parentheses close, before the parser sees the text.</summary>
/// <remarks>
/// The parser says little about what it can't read, and deep nesting overflows its stack, which ends the process. So both
/// are settled here: what passes has a shape that the parser reads, and is shallow.
/// </remarks>
internal sealed class FormulaShape
{
    /// <summary>The longest text of a formula, in characters.</summary>
    public const int LongestText = 500;

    /// <summary>The most parentheses that may be open at once.</summary>
    public const int MostNested = 32;

    /// <summary>The most signs or <c>not</c> in a row.</summary>
    public const int MostSigns = 32;

    private readonly string _text;
    private readonly List<FormulaProblem> _problems;

    // True for the parenthesis of a function.
    private readonly Stack<(bool OfFunction, FormulaSpan Span)> _open = [];
    private bool _valueNext = true;
    private int _signs;

    private FormulaShape(string text, List<FormulaProblem> problems)
    {
        _text = text;
        _problems = problems;
    }

    /// <summary>The tokens, signs before a value told apart from operators; reports the first token out of place.</summary>
    public static IReadOnlyList<FormulaToken> Check(
        string text,
        IReadOnlyList<FormulaToken> tokens,
        List<FormulaProblem> problems
    )
    {
        FormulaShape shape = new(text, problems);
        List<FormulaToken> told = new(tokens.Count);
        for (int i = 0; i < tokens.Count; i++)
        {
            FormulaToken? previous = i > 0 ? tokens[i - 1] : null;
            FormulaToken token = shape.Tell(tokens[i]);
            if (!shape.Takes(token, previous))
            {
                return told;
            }

            told.Add(token);
        }

        shape.End();
        return told;
    }

    private FormulaToken Tell(FormulaToken token) =>
        _valueNext && token is { Kind: FormulaTokenKind.Between, Text: "-" }
            ? token with
            {
                Kind = FormulaTokenKind.Before,
            }
            : token;

    private bool Takes(FormulaToken token, FormulaToken? previous) =>
        token.Kind switch
        {
            FormulaTokenKind.Number or FormulaTokenKind.Quoted or FormulaTokenKind.Name or FormulaTokenKind.Truth =>
                Value(token),
            FormulaTokenKind.Function => _valueNext || Misplaced(token, "an operator is missing before it"),
            FormulaTokenKind.Label => Label(token, previous),
            FormulaTokenKind.Open => Open(token, previous),
            FormulaTokenKind.Before => Before(token, previous),
            FormulaTokenKind.Between => Between(token),
            FormulaTokenKind.Close => Close(token, previous),
            _ => Comma(token),
        };

    private bool Value(FormulaToken token)
    {
        if (!_valueNext)
        {
            return Misplaced(token, "an operator is missing before it");
        }

        _valueNext = false;
        _signs = 0;
        return true;
    }

    private bool Label(FormulaToken token, FormulaToken? previous) =>
        (
            _open.Count > 0
            && _open.Peek().OfFunction
            && previous is { Kind: FormulaTokenKind.Open or FormulaTokenKind.Comma }
        )
        || Misplaced(
            token,
            "a name with a colon stands before a value of a function; otherwise write if(condition, value, other value)"
        );

    private bool Open(FormulaToken token, FormulaToken? previous)
    {
        if (!_valueNext)
        {
            return Misplaced(token, "an operator is missing before the parenthesis");
        }

        _signs = 0;
        _open.Push((previous is { Kind: FormulaTokenKind.Function }, token.Span));
        return _open.Count <= MostNested
            || Report(token.Span, FormulaFault.TooLarge, $"more than {MostNested} parentheses are open here");
    }

    private bool Before(FormulaToken token, FormulaToken? previous)
    {
        if (!_valueNext)
        {
            return Misplaced(token, "an operator is missing before it");
        }

        // Behind another operator the parser would bind it in a way that surprises.
        if (
            token.Text == "not"
            && previous
                is { Kind: FormulaTokenKind.Between or FormulaTokenKind.Before, Text: not ("and" or "or" or "not") }
        )
        {
            return Misplaced(token, "put 'not' and what it turns around in parentheses: (not ...)");
        }

        _signs++;
        return _signs <= MostSigns
            || Report(token.Span, FormulaFault.TooLarge, $"more than {MostSigns} signs stand in a row here");
    }

    private bool Between(FormulaToken token)
    {
        if (_valueNext)
        {
            return Misplaced(token, $"a value is missing before '{token.Text}'");
        }

        _valueNext = true;
        return true;
    }

    private bool Close(FormulaToken token, FormulaToken? previous)
    {
        if (_open.Count == 0)
        {
            return Misplaced(token, "this parenthesis closes none");
        }

        bool nothingInside = previous is { Kind: FormulaTokenKind.Open };
        if (_valueNext && !(nothingInside && _open.Peek().OfFunction))
        {
            return Misplaced(token, "a value is missing before the parenthesis");
        }

        _open.Pop();
        _valueNext = false;
        return true;
    }

    private bool Comma(FormulaToken token)
    {
        if (_open.Count == 0 || !_open.Peek().OfFunction)
        {
            return Misplaced(token, "a comma only separates the values of a function; a decimal has a point: 1.5");
        }

        if (_valueNext)
        {
            return Misplaced(token, "a value is missing before the comma");
        }

        _valueNext = true;
        return true;
    }

    private void End()
    {
        if (_valueNext)
        {
            FormulaSpan end = new(_text.Length, _text.Length);
            Report(
                end,
                FormulaFault.Unreadable,
                _text.Trim().Length == 0 ? "it is empty" : "a value is missing at the end"
            );
        }
        else if (_open.TryPeek(out (bool OfFunction, FormulaSpan Span) open))
        {
            Report(open.Span, FormulaFault.Unreadable, "this parenthesis is not closed");
        }
    }

    private bool Misplaced(FormulaToken token, string message) => Report(token.Span, FormulaFault.Unreadable, message);

    private bool Report(FormulaSpan span, FormulaFault fault, string message)
    {
        _problems.Add(FormulaProblem.At(_text, span, fault, message));
        return false;
    }
}
