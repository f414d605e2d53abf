using System.Globalization;
using ProcRunner.Text;

namespace ProcRunner.Quantities;

/// <summary>Reads a line of numbers and units into values; knows the forms, not what is believable.</summary>
internal sealed class EntryReader
{
    private const string TypeInFull = "Type the number in full with digits and one point, then its unit.";

    private readonly string _line;
    private readonly FieldHint _field;
    private readonly IReadOnlyList<EntryToken> _tokens;
    private readonly Unit? _unitOfAll;
    private readonly List<EntryValue> _values;

    private EntryReader(string line, FieldHint field, IReadOnlyList<EntryToken> tokens)
    {
        _line = line;
        _field = field;
        _tokens = tokens;
        _unitOfAll = UnitAtEnd(tokens);
        _values = new List<EntryValue>(tokens.Count);
    }

    /// <summary>Reads a line that has no comma in it.</summary>
    public static EntryReading Read(string line, FieldHint field) =>
        EntryToken.Split(line) is { } tokens
            ? new EntryReader(line, field, tokens).Read()
            : new EntryReading.Faulty(
                $"a semicolon with no value on one side: {SafeText.Show(line, EntryText.MostShown)}",
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
            return (
                Fault($"{SafeText.Show(token.Text, EntryText.MostShown)} with no number before it", TypeInFull),
                at
            );
        }

        if (EntryDoubts.About(_line, _tokens, at) is { } ambiguous)
        {
            return (ambiguous, at);
        }

        (EntryNumber? read, string? fault) = EntryNumber.Read(token.Text);
        if (read is not { } number)
        {
            return (Fault($"{SafeText.Show(token.Text, EntryText.MostShown)}, {fault}", TypeInFull), at);
        }

        if (at + 1 >= _tokens.Count || _tokens[at + 1].IsNumber || _tokens[at + 1].AfterSemicolon)
        {
            return (Add(number, token.Text, _unitOfAll ?? _field.Unit, isBare: true), at + 1);
        }

        string unitText = _tokens[at + 1].Text;
        if (Units.Find(unitText) is not { } unit)
        {
            return (
                Fault(
                    $"{SafeText.Show(unitText, EntryText.MostShown)} after {token.Text}, which is no unit known here",
                    UnitsOfField()
                ),
                at
            );
        }

        return HasMinutes(at, unit)
            ? (AddDegreesAndMinutes(at, number), at + 4)
            : (Add(number, token.Text, unit, isBare: false), at + 2);
    }

    // A unit at the end of a list holds for all that have none; minutes that belong to degrees before them are no unit of a list.
    private static Unit? UnitAtEnd(IReadOnlyList<EntryToken> tokens)
    {
        if (tokens is [] || tokens[^1] is not { IsNumber: false } last)
        {
            return null;
        }

        bool isMinutes = last.IsUnit(Units.ArcMinute) || last.IsUnit(Units.Minute);
        return isMinutes && tokens.Count > 2 && tokens[^3].IsUnit(Units.Degree) ? null : Units.Find(last.Text);
    }

    // 45°30' or 44 deg 53 min.
    private bool HasMinutes(int at, Unit unit) =>
        unit == Units.Degree
        && at + 3 < _tokens.Count
        && _tokens[at + 2] is { IsNumber: true, AfterSemicolon: false }
        && _tokens[at + 2].Text[0] is not ('+' or '-')
        && !_tokens[at + 3].AfterSemicolon
        && (_tokens[at + 3].IsUnit(Units.ArcMinute) || _tokens[at + 3].IsUnit(Units.Minute));

    // The sum is kept in minutes, where it is exact.
    private EntryReading.Faulty? AddDegreesAndMinutes(int at, EntryNumber degrees)
    {
        string both = $"{_tokens[at].Text} deg {_tokens[at + 2].Text} min";
        if (
            !degrees.IsWhole
            || EntryNumber.Read(_tokens[at + 2].Text).Number is not { IsMinutes: true } minutes
            || !TryJoin(_tokens[at].Text, degrees.Value, minutes.Value, out decimal joined)
        )
        {
            return Fault($"{both}, where degrees must be whole and minutes below 60", TypeInFull);
        }

        return AddRead(new EntryValue(new Quantity(joined, Units.ArcMinute), both, IsBare: false));
    }

    private static bool TryJoin(string degreesText, decimal degrees, decimal minutes, out decimal joined)
    {
        Rational size =
            (Rational.FromDecimal(degrees).Abs() * Rational.FromInteger(60)) + Rational.FromDecimal(minutes);
        return (degreesText[0] == '-' ? -size : size).TryRound(minutes.Scale, Rounding.Nearest, out joined);
    }

    private EntryReading.Faulty? Add(EntryNumber number, string typed, Unit unit, bool isBare)
    {
        Quantity quantity = new(number.Value, unit);
        string? text = number.IsFraction ? $"{typed} {unit.Symbol}".TrimEnd() : null;
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
                $"Type {EntryText.CountOf(_field)}{(_field.MostValues == 1 ? "" : ", with spaces between")}."
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
