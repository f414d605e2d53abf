namespace ProcRunner.Trail;

/// <summary>Reads the two fixed forms of time in a trail without building text.</summary>
internal static class TrailTime
{
    /// <summary>Reads <c>2026-11-25T01:02:03.456Z</c>.</summary>
    public static bool TryReadTime(ReadOnlySpan<byte> text, out DateTime utc)
    {
        utc = default;
        bool shaped =
            text.Length == 24
            && text[4] == '-'
            && text[7] == '-'
            && text[10] == 'T'
            && text[13] == ':'
            && text[16] == ':'
            && text[19] == '.'
            && text[23] == 'Z';
        if (!shaped)
        {
            return false;
        }

        int year = Digits(text[..4]);
        int month = Digits(text[5..7]);
        int day = Digits(text[8..10]);
        int hour = Digits(text[11..13]);
        int minute = Digits(text[14..16]);
        int second = Digits(text[17..19]);
        int millisecond = Digits(text[20..23]);
        bool fits =
            year >= 1
            && month is >= 1 and <= 12
            && day >= 1
            && day <= DateTime.DaysInMonth(year, month)
            && hour is >= 0 and <= 23
            && minute is >= 0 and <= 59
            && second is >= 0 and <= 59
            && millisecond >= 0;
        if (fits)
        {
            utc = new(year, month, day, hour, minute, second, millisecond, DateTimeKind.Utc);
        }

        return fits;
    }

    /// <summary>Reads <c>+01:00</c>; minus zero is never written.</summary>
    public static bool TryReadOffset(ReadOnlySpan<byte> text, out TimeSpan offset)
    {
        offset = default;
        if (text.Length != 6 || text[0] is not ((byte)'+' or (byte)'-') || text[3] != ':')
        {
            return false;
        }

        int hours = Digits(text[1..3]);
        int minutes = Digits(text[4..6]);
        int total = (hours * 60) + minutes;
        bool minus = text[0] == '-';
        offset = TimeSpan.FromMinutes(minus ? -total : total);
        return hours >= 0 && minutes is >= 0 and <= 59 && total <= 14 * 60 && !(minus && total == 0);
    }

    private static int Digits(ReadOnlySpan<byte> text)
    {
        int value = 0;
        foreach (byte digit in text)
        {
            if (digit is < (byte)'0' or > (byte)'9')
            {
                return -1;
            }

            value = (value * 10) + digit - '0';
        }

        return value;
    }
}
