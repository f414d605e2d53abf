using System.Text;
using FsCheck.Xunit;
using ProcRunner.Text;

namespace ProcRunner.Tests.Text;

// Which characters are control, format or direction marks: Unicode Character Database, general categories Cc and Cf, and
// Unicode Standard Annex 9, section 2.
public sealed class SafeTextTests
{
    [Theory]
    [InlineData("deck 0.0520 in", "deck 0.0520 in")]
    [InlineData("größe 測定 😀", "größe 測定 😀")]
    [InlineData("a\tb\r\nc", "a b  c")]
    [InlineData("\0\u001b[2J", "\\u0000\\u001b[2J")]
    [InlineData("\u009b2J", "\\u009b2J")]
    [InlineData("ab\u202Ecd\u2066", "ab\\u202ecd\\u2066")]
    [InlineData("\u2028", "\\u2028")]
    [InlineData("na\u200dme", "na\u200dme")]
    public void Cleans_what_goes_in(string text, string expected) => Assert.Equal(expected, SafeText.Clean(text));

    [Theory]
    [InlineData("deck 0.0520 in", "deck 0.0520 in")]
    [InlineData("größe 測定 😀", "größe 測定 😀")]
    [InlineData("\u001b[31m", "\\u001b[31m")]
    [InlineData("a\nb", "a\\u000ab")]
    [InlineData("\u007f\u0085", "\\u007f\\u0085")]
    [InlineData("x\u200by\u200dz\ufeff", "x\\u200by\\u200dz\\ufeff")]
    [InlineData("\u202eabc\u2069", "\\u202eabc\\u2069")]
    [InlineData("\U000E0041", "\\U000e0041")]
    [InlineData("45\u00b030' \u00b5m", "45\u00b030' \u00b5m")]
    [InlineData("\u009b31m", "\\u009b31m")] // the one-character form of escape [
    [InlineData("\u2028", "\\u2028")]
    [InlineData("a\u00a0b", "a\\u00a0b")]
    [InlineData("\ue000", "\\ue000")]
    public void Shows_what_can_not_be_seen(string text, string expected) => Assert.Equal(expected, SafeText.Show(text));

    // Not as attribute data: the compiler keeps that as UTF-8, which holds no lone surrogate.
    [Fact]
    public void A_lone_surrogate_is_replaced_visibly()
    {
        Assert.Equal("a\ufffdb", SafeText.Clean("a\ud800b"));
        Assert.Equal("a\ufffd", SafeText.Clean("a\udc00"));
        Assert.Equal("\ufffd\ufffd", SafeText.Clean("\udc00\ud800"));
        Assert.Equal("\\ufffd", SafeText.Show("\ud83d"));
    }

    [Fact]
    public void Cuts_what_is_too_long()
    {
        Assert.Equal("abc...", SafeText.Show("abcdef", 3));
        Assert.Equal("abc", SafeText.Show("abc", 3));
        Assert.Equal("a😀...", SafeText.Show("a😀b", 2));
    }

    [Property(MaxTest = 500)]
    public bool Cleaned_text_is_well_formed_and_stays_as_it_is(char[] characters)
    {
        string clean = SafeText.Clean(new string(characters));
        return SafeText.IsWellFormed(clean) && SafeText.Clean(clean) == clean && !clean.Any(char.IsControl);
    }

    [Property(MaxTest = 500)]
    public bool Shown_text_holds_no_control_or_format_character(char[] characters) =>
        SafeText
            .Show(new string(characters))
            .EnumerateRunes()
            .All(rune =>
                Rune.GetUnicodeCategory(rune)
                    is not System.Globalization.UnicodeCategory.Control
                        and not System.Globalization.UnicodeCategory.Format
            );
}
