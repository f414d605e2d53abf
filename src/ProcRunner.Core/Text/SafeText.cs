using System.Buffers;
using System.Globalization;
using System.Text;

namespace ProcRunner.Text;

/// <summary>
/// Text that came from a person or a file: made fit to be kept (<see cref="Clean"/>) and fit to be shown
/// (<see cref="Show"/>). What can't be seen is written out, as in <c>\u001b</c>, never dropped in silence.
/// </summary>
public static class SafeText
{
    // What neither keeping nor showing changes: the printable part of ASCII. Most text ends here.
    private static readonly SearchValues<char> Plain = SearchValues.Create(
        " !\"#$%&'()*+,-./0123456789:;<=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[\\]^_`abcdefghijklmnopqrstuvwxyz{|}~"
    );

    /// <summary>True when the text holds no lone surrogate, so that it can be written as UTF-8.</summary>
    public static bool IsWellFormed(ReadOnlySpan<char> text)
    {
        int at;
        while ((at = text.IndexOfAnyInRange('\uD800', '\uDFFF')) >= 0)
        {
            if (Rune.DecodeFromUtf16(text[at..], out _, out int used) != OperationStatus.Done)
            {
                return false;
            }

            text = text[(at + used)..];
        }

        return true;
    }

    /// <summary>
    /// The text as it may enter a trail: a lone surrogate becomes U+FFFD, a line break or tab a space; other control
    /// characters and the marks that turn the writing direction are written out. Cleaning twice changes nothing more.
    /// </summary>
    public static string Clean(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Rewrite(
            text,
            static rune =>
                rune.Value is '\t' or '\n' or '\r' ? " "
                : IsControlOrBidi(rune) ? Written(rune)
                : null
        );
    }

    /// <summary>
    /// The text as it may reach a terminal: every control, direction, zero-width and other format character, every
    /// separator but the plain space, and every private or unassigned character is written out, a lone surrogate as
    /// U+FFFD, so that no escape sequence gets through and nothing hides.
    /// </summary>
    /// <param name="text">Any text.</param>
    /// <param name="most">How many characters to show before three points, or one more when that would halve one.</param>
    public static string Show(string text, int most = int.MaxValue)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (most < text.Length && most > 0 && char.IsSurrogatePair(text, most - 1))
        {
            most++;
        }

        string shown = Rewrite(
            most < text.Length ? text[..most] : text,
            static rune => IsUnseen(rune) ? Written(rune) : null
        );
        return most < text.Length ? shown + "..." : shown;
    }

    private static string Rewrite(string text, Func<Rune, string?> replacement)
    {
        int first = text.AsSpan().IndexOfAnyExcept(Plain);
        if (first < 0)
        {
            return text;
        }

        var built = new StringBuilder(text.Length + 16).Append(text, 0, first);
        for (int at = first; at < text.Length; )
        {
            bool whole = Rune.DecodeFromUtf16(text.AsSpan(at), out Rune rune, out int used) == OperationStatus.Done;
            if (replacement(rune) is { } instead)
            {
                built.Append(instead);
            }
            else if (!whole)
            {
                built.Append('\uFFFD');
            }
            else
            {
                built.Append(text, at, used);
            }

            at += used;
        }

        return built.ToString();
    }

    private static string Written(Rune rune) =>
        rune.IsBmp
            ? string.Create(CultureInfo.InvariantCulture, $"\\u{rune.Value:x4}")
            : string.Create(CultureInfo.InvariantCulture, $"\\U{rune.Value:x8}");

    // The direction marks are those of Unicode Standard Annex 9, section 2 (explicit, isolate and implicit).
    private static bool IsControlOrBidi(Rune rune) =>
        Rune.GetUnicodeCategory(rune)
            is UnicodeCategory.Control
                or UnicodeCategory.LineSeparator
                or UnicodeCategory.ParagraphSeparator
        || rune.Value is (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069) or 0x200E or 0x200F or 0x061C;

    // U+FFFD is what half a character decodes as: it is named, since few can tell what its sign means.
    private static bool IsUnseen(Rune rune) =>
        rune == Rune.ReplacementChar
        || Rune.GetUnicodeCategory(rune)
            is UnicodeCategory.Control
                or UnicodeCategory.Format
                or UnicodeCategory.PrivateUse
                or UnicodeCategory.OtherNotAssigned
                or UnicodeCategory.LineSeparator
                or UnicodeCategory.ParagraphSeparator
                or UnicodeCategory.SpaceSeparator
            && rune.Value != ' ';
}
