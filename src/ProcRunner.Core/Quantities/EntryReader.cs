using System.Globalization;

namespace ProcRunner.Quantities;

/// <summary>Reads a line of numbers and units into values; knows the forms, not what is believable.</summary>
internal sealed class EntryReader
{
    private const string TypeInFull = "Type the number in full with digits and one point, then its unit.";

    private readonly string _line;
    private readonly FieldHint _field;
    private readonly IReadOnlyList<EntryToken> _tokens;
    private readonly List<EntryValue> _values = [];

    private EntryReader(string line, FieldHint field, IReadOnlyList<EntryToken> tokens)
    {
        _line = line;
        _field = field;
        _tokens = tokens;
    }

    /// <summary>Reads a line that has no comma in it.</summary>
    public static EntryReading Read(string line, FieldHint field) =>
        EntryToken.Split(line) is { } tokens
            ? new EntryReader(line, field, tokens).Read()
            : new EntryReading.Faulty(
                $"a semicolon with no value on one side: {VisibleText.Of(line)}",
                "Put a value on both sides of each semicolon."
            );

    private EntryReading Read()
    {
        int at = 0;
        while (at < _tokens.Count)
        {
            (EntryReading? stop, int next) = ReadValue(at);
            if (stop is not null)
            {
                return stop;
            }

            at = next;
        }

        return (EntryReading?)CheckCount() ?? new EntryReading.Clear(_values);
    }

    private (EntryReading? Stop, int Next) ReadValue(int at)
    {
        EntryToken token = _tokens[at];
        if (!token.IsNumber)
        {
            return (Fault($"{VisibleText.Of(token.Text)} with no number before it", TypeInFull), at);
        }

        if (AskAboutForm(at) is { } ambiguous)
        {
            return (ambiguous, at);
        }

        (EntryNumber? read, string? fault) = EntryNumber.Read(token.Text);
        if (read is not { } number)
        {
            return (Fault($"{VisibleText.Of(token.Text)}, {fault}", TypeInFull), at);
        }

        if (at + 1 >= _tokens.Count || _tokens[at + 1].IsNumber || _tokens[at + 1].AfterSemicolon)
        {
            return (Add(number, token.Text, _field.Unit, isBare: true), at + 1);
        }

        string unitText = _tokens[at + 1].Text;
        if (Units.Find(unitText) is not { } unit)
        {
            return (
                Fault($"{VisibleText.Of(unitText)} after {token.Text}, which is no unit known here", UnitsOfField()),
                at
            );
        }

        return unit == Units.Degree ? ReadDegrees(at, number) : (Add(number, token.Text, unit, isBare: false), at + 2);
    }

    // Degrees may be followed by minutes: 45°30' or 44 deg 53 min. The sum is kept in minutes, where it is exact.
    private (EntryReading? Stop, int Next) ReadDegrees(int at, EntryNumber degrees)
    {
        if (at + 2 >= _tokens.Count || !_tokens[at + 2].IsNumber || _tokens[at + 2].AfterSemicolon)
        {
            return (Add(degrees, _tokens[at].Text, Units.Degree, isBare: false), at + 2);
        }

        EntryToken token = _tokens[at + 2];
        bool hasUnit = at + 3 < _tokens.Count && !_tokens[at + 3].IsNumber && !_tokens[at + 3].AfterSemicolon;
        Unit? unit = hasUnit ? Units.Find(_tokens[at + 3].Text) : null;
        bool areMinutes = unit == Units.ArcMinute || unit == Units.Minute;
        (EntryNumber? read, string? _) = EntryNumber.Read(token.Text);
        if (read is not { HasSign: false, IsFraction: false } minutes || (hasUnit && !areMinutes))
        {
            return (Add(degrees, _tokens[at].Text, Units.Degree, isBare: false), at + 2);
        }

        string both = string.Create(CultureInfo.InvariantCulture, $"{_tokens[at].Text} deg {minutes.Value} min");
        bool canBeMinutes = minutes.Value < 60 && !degrees.IsFraction && decimal.IsInteger(degrees.Value);
        if (!areMinutes)
        {
            return canBeMinutes
                ? (AskAboutMinutes(at, both), at)
                : (Add(degrees, _tokens[at].Text, Units.Degree, isBare: false), at + 2);
        }

        if (!canBeMinutes || !TryJoin(_tokens[at].Text, degrees.Value, minutes.Value, out decimal joined))
        {
            return (Fault($"{both}, where degrees must be whole and minutes below 60", TypeInFull), at);
        }

        return (AddRead(new EntryValue(new Quantity(joined, Units.ArcMinute), both, IsBare: false)), at + 4);
    }

    private static bool TryJoin(string degreesText, decimal degrees, decimal minutes, out decimal joined)
    {
        Rational size =
            (Rational.FromDecimal(degrees).Abs() * Rational.FromInteger(60)) + Rational.FromDecimal(minutes);
        return (degreesText[0] == '-' ? -size : size).TryRound(minutes.Scale, Rounding.Nearest, out joined);
    }

    private EntryReading.Ambiguous? AskAboutForm(int at)
    {
        EntryToken token = _tokens[at];
        if (EntryNumber.HasPointsTooMany(token.Text))
        {
            return new EntryReading.Ambiguous(
                $"{VisibleText.Of(token.Text)} has more than one point.",
                [.. WithOnePointOf(token.Text).Select(text => Replace(token.Start, token.End, text))]
            );
        }

        int dash = token.Text.IndexOf('-', 1);
        if (dash > 0 && IsMixed(token.Text[..dash], token.Text[(dash + 1)..]))
        {
            string mixed = string.Concat(token.Text.AsSpan(0, dash), "+", token.Text.AsSpan(dash + 1));
            return new EntryReading.Ambiguous(
                $"{token.Text} is read as a mixed fraction only when it is typed with a plus.",
                [Replace(token.Start, token.End, mixed)]
            );
        }

        if (at + 1 < _tokens.Count && _tokens[at + 1] is { IsNumber: true, AfterSemicolon: false } next)
        {
            string fraction = next.Text.TrimStart('+');
            return IsMixed(token.Text, fraction)
                ? new EntryReading.Ambiguous(
                    $"{token.Text} {next.Text} can be one mixed fraction or two values.",
                    [
                        Replace(token.Start, next.End, $"{token.Text}+{fraction}"),
                        Replace(token.Start, next.End, $"{token.Text}; {fraction}"),
                    ]
                )
                : null;
        }

        return null;
    }

    private EntryReading.Ambiguous AskAboutMinutes(int at, string asMinutes)
    {
        EntryToken second = _tokens[at + 2];
        return new EntryReading.Ambiguous(
            $"{second.Text} after the degrees can be minutes or another value.",
            [
                Replace(_tokens[at].Start, second.End, asMinutes),
                Replace(_tokens[at].Start, second.End, $"{_tokens[at].Text} deg; {second.Text}"),
            ]
        );
    }

    private static bool IsMixed(string whole, string fraction)
    {
        (EntryNumber? first, string? _) = EntryNumber.Read(whole);
        (EntryNumber? second, string? fault) = fraction.Length == 0 ? default : EntryNumber.Read(fraction);
        return whole.All(c => char.IsAsciiDigit(c) || c is '-' or '+')
            && first is { IsFraction: false }
            && fraction.Contains('/')
            && char.IsAsciiDigit(fraction[0])
            && !fraction.Contains('+')
            && (second is { Value: < 1 } || fault is not null);
    }

    // 0.0.52 was 0.052 or 0.52; two readings may also have lost the space between them.
    private static IEnumerable<string> WithOnePointOf(string text)
    {
        int[] points = [.. Enumerable.Range(0, text.Length).Where(i => text[i] == '.')];
        foreach (int kept in points)
        {
            yield return string.Concat(text.Where((c, i) => c != '.' || i == kept));
        }

        if (points.Length == 2)
        {
            yield return text[..points[1]] + "; " + text[points[1]..];
        }
    }

    private string Replace(int start, int end, string text) =>
        string.Concat(_line.AsSpan(0, start), text, _line.AsSpan(end));

    private EntryReading.Faulty? Add(EntryNumber number, string typed, Unit unit, bool isBare)
    {
        Quantity quantity = new(number.Value, unit);
        string text = number.IsFraction ? $"{typed} {unit.Symbol}".TrimEnd() : quantity.ToString();
        return AddRead(new EntryValue(quantity, text, isBare));
    }

    private EntryReading.Faulty? AddRead(EntryValue value)
    {
        if (value.Quantity.Dimension != _field.Unit.Dimension)
        {
            return Fault(
                $"{value.Text}, a {value.Quantity.Dimension}, where the field takes a {_field.Unit.Dimension}",
                UnitsOfField()
            );
        }

        _values.Add(value);
        return null;
    }

    private EntryReading.Faulty? CheckCount() =>
        _values.Count >= _field.FewestValues && _values.Count <= _field.MostValues
            ? null
            : Fault(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{_values.Count} value(s): {string.Join("; ", _values.Take(8).Select(value => value.Text))}"
                ),
                $"Type {EntryText.CountOf(_field)}, with spaces between."
            );

    private string UnitsOfField()
    {
        IEnumerable<string> symbols = Units
            .All.Where(unit => unit.Dimension == _field.Unit.Dimension && unit != Units.One)
            .Select(unit => unit.Symbol);
        return $"Units taken here: {string.Join(", ", symbols)}. A bare number is in {_field.Unit.Name}.";
    }

    private static EntryReading.Faulty Fault(string what, string toDo) => new(what, toDo);
}
