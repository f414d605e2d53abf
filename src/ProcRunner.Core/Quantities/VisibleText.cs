using System.Globalization;
using System.Text;

namespace ProcRunner.Quantities;

/// <summary>Shows text that came from a person, a gauge or a file: nothing in it can move the cursor or hide.</summary>
public static class VisibleText
{
    /// <summary>
    /// The text with every control, format, separator, unassigned or half character written as its number
    /// (<c>&lt;U+001B&gt;</c>), cut with three points when longer than asked.
    /// </summary>
    /// <param name="text">Any text.</param>
    /// <param name="most">How many characters of the original to show.</param>
    public static string Of(string text, int most = 60)
    {
        StringBuilder shown = new();
        int taken = 0;
        foreach (Rune rune in text.EnumerateRunes())
        {
            if (taken >= most)
            {
                return shown.Append("...").ToString();
            }

            // A half surrogate enumerates as U+FFFD; it is named as what it stands for, a character that can't be shown.
            if (IsPlain(rune))
            {
                shown.Append(rune);
            }
            else
            {
                shown.Append(CultureInfo.InvariantCulture, $"<U+{rune.Value:X4}>");
            }

            taken += rune.Utf16SequenceLength;
        }

        return shown.ToString();
    }

    private static bool IsPlain(Rune rune) =>
        rune.Value == ' '
        || (
            rune != Rune.ReplacementChar
            && Rune.GetUnicodeCategory(rune)
                is not (
                    UnicodeCategory.Control
                    or UnicodeCategory.Format
                    or UnicodeCategory.Surrogate
                    or UnicodeCategory.PrivateUse
                    or UnicodeCategory.OtherNotAssigned
                    or UnicodeCategory.LineSeparator
                    or UnicodeCategory.ParagraphSeparator
                    or UnicodeCategory.SpaceSeparator
                )
        );
}
