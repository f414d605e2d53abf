namespace ProcRunner.Quantities;

/// <summary>Whether a bare number is believable in a field, and what else it may have meant.</summary>
internal sealed class ExpectedRange
{
    private const int MostShift = 6;
    private const int MostMeanings = 9;

    // A number further out than this is nearer, as a ratio, to a slipped point (ten times) than to the limit itself.
    private static readonly Rational FarSquared = Rational.FromInteger(10);

    private readonly Unit _unit;
    private readonly Rational? _low;
    private readonly Rational? _high;

    /// <summary>The range of a field, in the field's own unit, where "ten times" means what the operator thinks it means.</summary>
    public ExpectedRange(FieldHint field)
    {
        _unit = field.Unit;
        _low = field.Low is { } low ? low.In(_unit) : null;
        _high = field.High is { } high ? high.In(_unit) : null;
    }

    /// <summary>
    /// Whether there is a range to hold an entry against. A pure number has no unit by which to insist, so it is not asked about.
    /// </summary>
    public bool IsKnown => (_low is not null || _high is not null) && _unit != Units.One;

    /// <summary>Whether an amount is in the range or not far from it; a mere failure to meet a limit is near.</summary>
    public bool IsNear(Quantity quantity)
    {
        Rational value = quantity.In(_unit);
        if (value >= _low && value <= _high)
        {
            return true;
        }

        Rational squared = value * value;
        return !(Largest() is { IsZero: false } top && squared > FarSquared * top * top)
            && !(Smallest() is { } bottom && (value.Sign != bottom.Sign || squared * FarSquared < bottom * bottom));
    }

    /// <summary>
    /// Lines in which the unbelievable bare numbers are read otherwise, all in the same way: in the field's unit where that at
    /// the end of the line was taken, the point elsewhere, another unit, the other sign. Those that land in the range, or if none does those that land near it; and last the line as it stands.
    /// As many as there are keys to choose one by.
    /// </summary>
    public IEnumerable<string> Meanings(IReadOnlyList<EntryValue> values)
    {
        string[] inside = [.. Readings(values, IsInside)];
        IEnumerable<string> others = inside.Length > 0 ? inside : Readings(values, IsNear);
        return others.Take(MostMeanings - 1).Append(string.Join("; ", values.Select(value => value.Text)));
    }

    /// <summary>Whether a value was typed bare and is far from the range.</summary>
    public bool IsDoubtful(EntryValue value) =>
        value.IsBare && IsKnown && (!IsNear(value.Quantity) || IsOfOtherScale(value.Quantity));

    // 20 where 60 to 80 degF is expected: degrees Celsius. On a scale of temperature the two lie too near for a ratio to tell.
    private bool IsOfOtherScale(Quantity quantity) =>
        _unit.Dimension.OfDifference() != _unit.Dimension
        && !IsInside(quantity)
        && Units.All.Any(unit =>
            unit.Dimension == _unit.Dimension && unit != _unit && IsInside(new Quantity(quantity.Value, unit))
        );

    private IEnumerable<string> Readings(IReadOnlyList<EntryValue> values, Func<Quantity, bool> fits)
    {
        // Of several places for the point the nearest one that fits is the likeliest slip.
        IEnumerable<string?> shifted = Enumerable
            .Range(1, MostShift)
            .SelectMany(size => new[] { -size, size })
            .Select(shift => Line(values, value => Shift(value, shift), fits));
        // A pure number has no unit to type, so a meaning without one would be read as something else.
        IEnumerable<string?> converted = Units
            .All.Where(unit => unit.Dimension == _unit.Dimension && unit != _unit && unit != Units.One)
            .Select(unit => Line(values, value => new Quantity(value.Value, unit), fits));
        string? turned = Line(values, value => new Quantity(-value.Value, _unit), fits);
        return shifted
            .Prepend(Line(values, value => new Quantity(value.Value, _unit), fits))
            .OfType<string>()
            .Take(1)
            .Concat(converted.OfType<string>())
            .Concat(turned is null ? [] : [turned]);
    }

    private Quantity? Shift(Quantity value, int places) =>
        DecimalBits.TryShift(value.Value, places, out decimal moved) ? new Quantity(moved, _unit) : null;

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
        Rational value = quantity.In(_unit);
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
