namespace ProcRunner.Quantities;

/// <summary>
/// A unit at the end of a line that was meant for the last value alone: a gauge that sends millimetres, after places typed in
/// inches.
/// </summary>
internal static class SharedUnit
{
    private const string Why = "The unit at the end can be that of all values, or of the last one alone.";

    // Places of one reading lie nearer to each other than this, as a ratio: nearer to it than to a slipped point, ten times.
    private static readonly Rational FarSquared = Rational.FromInteger(10);

    /// <summary>
    /// What is doubtful about the unit at the end: with it a value lies far from the last one, in the field's own it lies nearer.
    /// Null where nothing is.
    /// </summary>
    public static EntryReading.Ambiguous? DoubtOf(IReadOnlyList<EntryValue> values, FieldHint field)
    {
        EntryValue last = values[^1];
        bool isShared = !last.IsBare && values.Any(value => IsShared(value, field));
        return isShared && values.Any(value => IsShared(value, field) && IsNearerAsOwn(value, last, field))
            ? new EntryReading.Ambiguous(
                Why,
                [
                    string.Join(
                        "; ",
                        values.Select(value => IsShared(value, field) ? Own(value, field).ToString() : value.Text)
                    ),
                    string.Join("; ", values.Select(value => value.Text)),
                ]
            )
            : null;
    }

    private static bool IsShared(EntryValue value, FieldHint field) =>
        value.IsBare && value.Quantity.Unit != field.Unit;

    private static bool IsNearerAsOwn(EntryValue value, EntryValue last, FieldHint field)
    {
        Rational end = Size(last.Quantity);
        (Rational shared, Rational own) = (Size(value.Quantity), Size(Own(value, field)));
        return !end.IsZero
            && !shared.IsZero
            && Squared(shared, end) > FarSquared
            && Squared(own, end) < Squared(shared, end);
    }

    private static Rational Squared(Rational one, Rational other)
    {
        Rational ratio = one > other ? one / other : other / one;
        return ratio * ratio;
    }

    private static Rational Size(Quantity quantity) => Exact.Of(quantity).Value.Abs();

    private static Quantity Own(EntryValue value, FieldHint field) => new(value.Quantity.Value, field.Unit);
}
