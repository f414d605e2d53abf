using ProcRunner.Quantities;

namespace ProcRunner.Tests.Quantities;

public sealed class VisibleTextTests
{
    [Theory]
    [InlineData("0.052 in", "0.052 in")]
    [InlineData("45\u00B030' \u00B5m", "45\u00B030' \u00B5m")]
    [InlineData("\u001b[2J", "<U+001B>[2J")]
    [InlineData("a\tb\r\n", "a<U+0009>b<U+000D><U+000A>")]
    [InlineData("\u009B31m", "<U+009B>31m")] // the one-character form of escape [
    [InlineData("\u202Eabc", "<U+202E>abc")]
    [InlineData("\u200B", "<U+200B>")]
    [InlineData("\u2028", "<U+2028>")]
    [InlineData("a\u00A0b", "a<U+00A0>b")]
    public void Shows_what_could_hide_or_steer(string text, string expected) =>
        Assert.Equal(expected, VisibleText.Of(text));

    [Fact]
    public void Shows_half_a_character_as_one_that_can_not_be_shown() =>
        Assert.Equal("a<U+FFFD>b", VisibleText.Of("a\uD800b"));

    [Fact]
    public void Cuts_what_is_too_long()
    {
        Assert.Equal("abc...", VisibleText.Of("abcdef", 3));
        Assert.Equal("abc", VisibleText.Of("abc", 3));
    }
}
