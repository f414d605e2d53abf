namespace ProcRunner.Quantities;

/// <summary>Whether a bare number is believable in a field, and what else it may have meant.</summary>
internal sealed class ExpectedRange
{
    private const int MostShift = 6;

    // A number further out than this is nearer, as a ratio, to a slipped point (ten times) than to the limit itself.
    private static readonly Rational FarSquared = Rational.FromInteger(10);

    private readonly Unit _unit;
    private readonly Rational? _low;
    private readonly Rational? _high;

    /// <summary>The range of a field, in the field's own unit, where "ten times" means what the operator thinks it means.</summary>
    public ExpectedRange(FieldHint field)
    {
        _unit = field.Unit;
        _low = field.Low is { } low ? Exact.Of(low).In(_unit) : null;
        _high = field.High is { } high ? Exact.Of(high).In(_unit) : null;
    }

    /// <summary>
    /// Whether there is a range to hold an entry against. A pure number has no unit by which to insist, so it is not asked about.
    /// </summary>
    public bool IsKnown => (_low is not null || _high is not null) && _unit != Units.One;

    /// <summary>Whether an amount is in the range or not far from it; a mere failure to meet a limit is near.</summary>
    public bool IsNear(Quantity quantity)
    {
        Rational value = Exact.Of(quantity).In(_unit);
        Rational squared = value * value;
        return !(Largest() is { IsZero: false } top && squared > FarSquared * top * top)
            && !(Smallest() is { } bottom && (value.Sign != bottom.Sign || squared * FarSquared < bottom * bottom));
    }

    /// <summary>
    /// Lines in which the unbelievable bare numbers are read otherwise, all in the same way and all near the range: the point
    /// elsewhere, another unit, the other sign; and last as they stand.
    /// </summary>
    public IEnumerable<string> Meanings(IReadOnlyList<EntryValue> values)
    {
        if (Shifted(values) is { } shifted)
        {
            yield return shifted;
        }

        foreach (Unit unit in Units.All.Where(unit => unit.Dimension == _unit.Dimension && unit != _unit))
        {
            if (Line(values, value => new Quantity(value.Value, unit), IsNear) is { } line)
            {
                yield return line;
            }
        }

        if (Line(values, value => new Quantity(-value.Value, _unit), IsNear) is { } turned)
        {
            yield return turned;
        }

        yield return string.Join("; ", values.Select(value => value.Text));
    }

    /// <summary>Whether a value was typed bare and is far from the range.</summary>
    public bool IsDoubtful(EntryValue value) => value.IsBare && IsKnown && !IsNear(value.Quantity);

    // The smallest shift that brings them into the range, else the smallest that brings them near it.
    private string? Shifted(IReadOnlyList<EntryValue> values)
    {
        int[] shifts = [.. Enumerable.Range(1, MostShift).SelectMany(size => new[] { -size, size })];
        return shifts.Select(shift => ShiftedLine(values, shift, IsInside)).FirstOrDefault(line => line is not null)
            ?? shifts.Select(shift => ShiftedLine(values, shift, IsNear)).FirstOrDefault(line => line is not null);
    }

    private string? ShiftedLine(IReadOnlyList<EntryValue> values, int shift, Func<Quantity, bool> fits) =>
        Line(
            values,
            quantity =>
                DecimalBits.TryShift(quantity.Value, shift, out decimal moved) ? new Quantity(moved, _unit) : null,
            fits
        );

    private string? Line(IReadOnlyList<EntryValue> values, Func<Quantity, Quantity?> read, Func<Quantity, bool> fits)
    {
        List<string> texts = [];
        foreach (EntryValue value in values)
        {
            if (!IsDoubtful(value))
            {
                texts.Add(value.Text);
            }
            else if (read(value.Quantity) is { } other && fits(other))
            {
                texts.Add(other.ToString());
            }
            else
            {
                return null;
            }
        }

        return string.Join("; ", texts);
    }

    private bool IsInside(Quantity quantity)
    {
        Rational value = Exact.Of(quantity).In(_unit);
        return !(value < _low) && !(value > _high);
    }

    // The end furthest from 0, if the range is closed on that side.
    private Rational? Largest() =>
        (_low, _high) switch
        {
            ({ } low, { } high) => low.Abs() > high.Abs() ? low.Abs() : high.Abs(),
            (null, { Sign: > 0 } high) => high,
            ({ Sign: < 0 } low, null) => low.Abs(),
            _ => null,
        };

    // The end nearest to 0, if the range stays on one side of it.
    private Rational? Smallest() =>
        _low is { Sign: > 0 } bottom ? bottom
        : _high is { Sign: < 0 } top ? top
        : null;
}
