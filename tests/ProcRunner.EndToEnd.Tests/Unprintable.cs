using System.Globalization;

namespace ProcRunner.EndToEnd.Tests;

/// <summary>What must not reach a terminal: control characters but the line feed, and those that turn or hide text.</summary>
internal static class Unprintable
{
    public static string[] In(string text) =>
        [
            .. text.Where(c =>
                    c is not '\n'
                    && CharUnicodeInfo.GetUnicodeCategory(c)
                        is UnicodeCategory.Control
                            or UnicodeCategory.Format
                            or UnicodeCategory.LineSeparator
                            or UnicodeCategory.ParagraphSeparator
                )
                .Select(c => ((int)c).ToString("x4", CultureInfo.InvariantCulture)),
        ];
}
