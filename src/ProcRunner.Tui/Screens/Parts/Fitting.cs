using System.Globalization;
using ProcRunner.Text;

namespace ProcRunner.Tui.Screens.Parts;

/// <summary>Text of any length and content made to fit a place; the work done depends on the place, not on the text.</summary>
internal static class Fitting
{
    /// <summary>Characters of a long text that are shown over several lines.</summary>
    public const int MostCharacters = 2000;

    /// <summary>One line: what is too long ends in three dots.</summary>
    public static string Line(string text, int width)
    {
        if (width <= 0)
        {
            return "";
        }

        string shown = SafeText.Show(Whole(text, width + 1));
        return shown.Length <= width ? shown : shown[..Math.Max(0, width - 3)] + "...";
    }

    /// <summary>One line filled up with spaces.</summary>
    public static string Cell(string text, int width) => Line(text, width).PadRight(Math.Max(0, width));

    /// <summary>The end of a text, which is where it is typed.</summary>
    public static string End(string text, int width)
    {
        string shown = SafeText.Show(text[Math.Max(0, text.Length - width)..]);
        return shown.Length <= width ? shown : shown[^width..];
    }

    /// <summary>A long text, made visible and cut, with its length said when it was.</summary>
    public static string Words(string text) =>
        text.Length <= MostCharacters
            ? SafeText.Show(text)
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{SafeText.Show(Whole(text, MostCharacters))}... ({text.Length} characters in all)"
            );

    // No surrogate pair is cut in two.
    private static string Whole(string text, int length)
    {
        int end = Math.Min(text.Length, length);
        return end > 0 && end < text.Length && char.IsHighSurrogate(text[end - 1]) ? text[..(end - 1)] : text[..end];
    }
}
