using ProcRunner.Quantities;

namespace ProcRunner.Formulas;

/// <summary>Cuts a formula's text into tokens; everything that is no part of the language stops here, with its place.</summary>
/// <remarks>
/// The parser behind it knows a larger language, reads numbers as doubles and keeps no positions. So numbers, names and
/// quoted texts are read here, and the parser only ever sees their running numbers.
/// </remarks>
internal sealed class FormulaScanner
{
    private readonly string _text;
    private readonly List<FormulaToken> _tokens = [];
    private readonly List<FormulaProblem> _problems;
    private int _at;

    private FormulaScanner(string text, List<FormulaProblem> problems)
    {
        _text = text;
        _problems = problems;
    }

    /// <summary>All tokens of the text, in order; what can't be read is reported and left out.</summary>
    public static IReadOnlyList<FormulaToken> Scan(string text, List<FormulaProblem> problems)
    {
        FormulaScanner scanner = new(text, problems);
        while (scanner._at < text.Length)
        {
            scanner.Next();
        }

        return scanner._tokens;
    }

    private void Next()
    {
        char first = _text[_at];
        if (first is ' ' or '\t' or '\r' or '\n')
        {
            _at++;
        }
        else if (first == '\'')
        {
            Enclosed('\'', FormulaTokenKind.Quoted, "the quote is not closed: a ' is missing");
        }
        else if (first == '[')
        {
            Enclosed(']', FormulaTokenKind.Name, "the name is not closed: a ] is missing");
        }
        else if (char.IsAsciiDigit(first) || first == '.')
        {
            Number();
        }
        else if (char.IsLetter(first) || first == '_')
        {
            Word();
        }
        else
        {
            Sign();
        }
    }

    private void Enclosed(char closing, FormulaTokenKind kind, string unclosed)
    {
        int end = _text.IndexOf(closing, _at + 1);
        if (end < 0)
        {
            Report(_text.Length, FormulaFault.Unreadable, unclosed);
            return;
        }

        string inside = _text[(_at + 1)..end];
        if (kind == FormulaTokenKind.Name && (inside.Trim() != inside || inside.Length == 0 || inside.Contains('[')))
        {
            // The token stays, so that what stands around it is still judged.
            Problem(
                end + 1,
                FormulaFault.Unreadable,
                "a name stands between the brackets alone, without blanks: [name]"
            );
        }

        Add(kind, inside, end + 1);
    }

    private void Number()
    {
        int end = EndOf(c => char.IsAsciiDigit(c) || c == '.');
        string number = _text[_at..end];
        int tail = end;
        while (tail < _text.Length && (char.IsLetterOrDigit(_text[tail]) || _text[tail] == '_'))
        {
            tail++;
        }

        if (tail > end)
        {
            Problem(tail, FormulaFault.Unreadable, AfterNumber(number, _text[end..tail]));
            end = tail;
        }
        else if (number.EndsWith('.') || !DecimalText.TryUnsigned(number, out _))
        {
            string say =
                number.Count(c => c == '.') > 1 ? "has two points"
                : number.EndsWith('.') ? "ends with its point"
                : "has more digits than can be kept exactly (28)";
            Problem(end, FormulaFault.Unreadable, $"{number} is no number: it {say}");
        }

        Add(FormulaTokenKind.Number, number, end);
    }

    private static string AfterNumber(string number, string tail) =>
        Units.Find(tail) is { } unit ? $"a quantity stands in quotes: '{number} {unit.Symbol}'"
        : tail[0] is 'e' or 'E' ? $"{number}{tail} is no number: write all its digits, without an exponent"
        : $"{number} and {tail} run together: an operator or a blank is missing";

    private void Word()
    {
        int end = EndOf(c => char.IsLetterOrDigit(c) || c == '_');
        string word = _text[_at..end];
        int hyphened = EndOf(c => char.IsLetterOrDigit(c) || c is '_' or '-' or '.');
        if (_text[hyphened - 1] is not ('-' or '.') && FollowedBy(hyphened, ':'))
        {
            Add(FormulaTokenKind.Label, _text[_at..hyphened], _text.IndexOf(':', hyphened) + 1);
        }
        else if (hyphened > end && FollowedBy(hyphened, '(') && FormulaWorkNames.IsLike(_text[_at..hyphened]))
        {
            Add(FormulaTokenKind.Function, _text[_at..hyphened], hyphened);
        }
        else if (word is "and" or "or")
        {
            Add(FormulaTokenKind.Between, word, end);
        }
        else if (word == "not")
        {
            Add(FormulaTokenKind.Before, word, end);
        }
        else if (word is "yes" or "no")
        {
            Add(FormulaTokenKind.Truth, word, end);
        }
        else if (FormulaSigns.LeftOutWord(word) is { } say)
        {
            Report(end, FormulaFault.LeftOut, say);
        }
        else if (FollowedBy(end, '('))
        {
            Add(FormulaTokenKind.Function, word, end);
        }
        else
        {
            LooseWord(word, end);
        }
    }

    private void LooseWord(string word, int end)
    {
        if (word.ToUpperInvariant() is "AND" or "OR" or "NOT" or "YES" or "NO")
        {
            Report(end, FormulaFault.Unreadable, $"write it in small letters: {word.ToLowerInvariant()}");
        }
        else if (
            Units.Find(word) is { } unit
            && _tokens.Count > 0
            && _tokens[^1] is { Kind: FormulaTokenKind.Number } number
        )
        {
            Report(end, FormulaFault.Unreadable, $"a quantity stands in quotes: '{number.Text} {unit.Symbol}'");
        }
        else if (FormulaFunctions.Find(word) is not null || FormulaWorkNames.Find(word) is not null)
        {
            Report(end, FormulaFault.Unreadable, $"{word} is a function: its values stand in parentheses behind it");
        }
        else
        {
            // Read as the name it was probably meant to be: then only this is reported.
            Problem(
                end,
                FormulaFault.Unreadable,
                $"a name stands in brackets, [{word}], and a text in quotes, '{word}'"
            );
            Add(FormulaTokenKind.Name, word, end);
        }
    }

    private void Sign()
    {
        ReadOnlySpan<char> rest = _text.AsSpan(_at);
        if (FormulaSigns.LeftOutAt(rest) is var (sign, say))
        {
            Report(_at + sign.Length, FormulaFault.LeftOut, say);
        }
        else if (FormulaSigns.SignAt(rest) is { } taken)
        {
            Add(FormulaTokenKind.Between, taken, _at + taken.Length);
        }
        else if (rest[0] is '(' or ')' or ',')
        {
            FormulaTokenKind kind = rest[0] switch
            {
                '(' => FormulaTokenKind.Open,
                ')' => FormulaTokenKind.Close,
                _ => FormulaTokenKind.Comma,
            };
            Add(kind, rest[..1].ToString(), _at + 1);
        }
        else
        {
            int size = char.IsSurrogatePair(_text, _at) ? 2 : 1;
            Report(_at + size, FormulaFault.Unreadable, "this sign has no meaning in a formula");
        }
    }

    private bool FollowedBy(int end, char sign)
    {
        while (end < _text.Length && _text[end] == ' ')
        {
            end++;
        }

        return end < _text.Length && _text[end] == sign;
    }

    private int EndOf(Func<char, bool> belongs)
    {
        int end = _at + 1;
        while (end < _text.Length && belongs(_text[end]))
        {
            end++;
        }

        return end;
    }

    private void Add(FormulaTokenKind kind, string text, int end)
    {
        _tokens.Add(new FormulaToken(kind, text, new FormulaSpan(_at, end)));
        _at = end;
    }

    private void Report(int end, FormulaFault fault, string message)
    {
        Problem(end, fault, message);
        _at = end;
    }

    private void Problem(int end, FormulaFault fault, string message) =>
        _problems.Add(FormulaProblem.At(_text, new FormulaSpan(_at, end), fault, message));
}
