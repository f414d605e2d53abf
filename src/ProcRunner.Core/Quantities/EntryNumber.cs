using System.Numerics;

namespace ProcRunner.Quantities;

/// <summary>Reads one number as it is typed: <c>-0.002</c>, <c>.052</c>, <c>1/16</c>, <c>1+17/32</c>.</summary>
/// <param name="Value">The number, exactly.</param>
/// <param name="IsFraction">Whether it was typed with a fraction bar.</param>
/// <param name="HasSign">Whether it was typed with a sign.</param>
internal readonly record struct EntryNumber(decimal Value, bool IsFraction, bool HasSign)
{
    private const int MostFractionDigits = 9;

    /// <summary>Whether minutes of angle may follow it as degrees.</summary>
    public bool IsWhole => !IsFraction && decimal.IsInteger(Value);

    /// <summary>Whether it can stand for minutes of angle after degrees.</summary>
    public bool IsMinutes => !IsFraction && !HasSign && Value < 60;

    /// <summary>The number, or why it can't be read.</summary>
    public static (EntryNumber? Number, string? Fault) Read(string text)
    {
        bool hasSign = text[0] is '+' or '-';
        string size = hasSign ? text[1..] : text;
        int bar = size.IndexOf('/');
        (decimal? value, string? fault) = bar < 0 ? ReadDecimal(size) : ReadFraction(size, bar);
        return value is not { } number
            ? (null, fault)
            : (new EntryNumber(text[0] == '-' && number != 0 ? -number : number, bar >= 0, hasSign), null);
    }

    private static (decimal? Value, string? Fault) ReadDecimal(string size)
    {
        if (DecimalText.TryUnsigned(size, out decimal value))
        {
            return (value, null);
        }

        bool isPlain = size.Any(char.IsAsciiDigit) && size.All(c => char.IsAsciiDigit(c) || c == '.');
        return (null, isPlain ? "more digits than can be kept" : "not a number");
    }

    private static (decimal? Value, string? Fault) ReadFraction(string size, int bar)
    {
        int plus = size.IndexOf('+');
        string whole = plus < 0 ? "0" : size[..plus];
        if (plus > bar || !IsDigits(whole) || !IsDigits(size[(plus + 1)..bar]) || !IsDigits(size[(bar + 1)..]))
        {
            return (null, "not a fraction of whole numbers of up to 9 digits");
        }

        BigInteger above = Whole(size[(plus + 1)..bar]);
        BigInteger below = Whole(size[(bar + 1)..]);
        if (below.IsZero)
        {
            return (null, "a fraction over 0");
        }

        Rational exact = Rational.FromInteger(Whole(whole)) + Rational.FromRatio(above, below);
        return exact.TryToDecimal(out decimal value)
            ? (value, null)
            : (null, "a fraction that no decimal equals exactly, so it can't be kept as typed");
    }

    private static bool IsDigits(string text) =>
        text.Length is > 0 and <= MostFractionDigits && text.All(char.IsAsciiDigit);

    private static BigInteger Whole(string text) =>
        DecimalText.TryUnsigned(text, out decimal value) ? new BigInteger(value) : 0;
}
