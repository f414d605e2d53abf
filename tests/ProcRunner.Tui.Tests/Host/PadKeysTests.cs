using ProcRunner.Tui.Host;

namespace ProcRunner.Tui.Tests.Host;

public sealed class PadKeysTests
{
    // VT220 Programmer Reference Manual (EK-VT220-RM), table 3-7: the pad in application mode sends SS3 and one character.
    // SS3 X for = and SS3 j, k, o for *, +, / are xterm's (ctlseqs, "VT220-Style Function Keys").
    [Theory]
    [InlineData("Op", "0")]
    [InlineData("Oq", "1")]
    [InlineData("Or", "2")]
    [InlineData("Os", "3")]
    [InlineData("Ot", "4")]
    [InlineData("Ou", "5")]
    [InlineData("Ov", "6")]
    [InlineData("Ow", "7")]
    [InlineData("Ox", "8")]
    [InlineData("Oy", "9")]
    [InlineData("Om", "-")]
    [InlineData("Ol", ",")]
    [InlineData("On", ".")]
    [InlineData("OM", "\r")]
    [InlineData("Oj", "*")]
    [InlineData("Ok", "+")]
    [InlineData("Oo", "/")]
    [InlineData("OX", "=")]
    public void The_pad_in_application_mode_is_read_as_its_characters(string sequence, string meant) =>
        Assert.Equal(meant, new PadKeys().Read("\u001b" + sequence));

    [Fact]
    public void A_sequence_in_two_pieces_is_one_key()
    {
        PadKeys pad = new();
        Assert.Equal("12", pad.Read("1\u001bOr"));
        Assert.Equal("", pad.Read("\u001bO"));
        Assert.True(pad.Holds);
        Assert.Equal("5", pad.Read("u"));
        Assert.False(pad.Holds);
    }

    [Fact]
    public void What_was_held_for_nothing_is_given()
    {
        PadKeys pad = new();
        Assert.Equal("\u001b", pad.Read("\u001b"));
        Assert.Equal("", pad.Read("\u001bO"));
        Assert.Equal("\u001bO", pad.Release());
    }

    // console_codes(4): the Linux console; ESC O A is cursor up in xterm's application mode.
    [Theory]
    [InlineData("\n", "\r")]
    [InlineData("\b", "\u007f")]
    [InlineData("\u001b[A", "\u001b[A")]
    [InlineData("\u001bOA", "\u001bOA")]
    [InlineData("\u001b\u001bOq", "\u001b1")]
    [InlineData("O", "O")]
    public void Other_keys_are_left_but_for_two_of_the_console(string came, string meant) =>
        Assert.Equal(meant, new PadKeys().Read(came));
}
