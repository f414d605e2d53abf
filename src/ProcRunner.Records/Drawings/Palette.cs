namespace ProcRunner.Records.Drawings;

/// <summary>The colours of page and paper, as red, green, blue. A test works out that text on each ground can be read.</summary>
internal static class Palette
{
    /// <summary>The colour of a tone; null for none.</summary>
    public static (byte Red, byte Green, byte Blue)? Of(Tone tone) =>
        tone switch
        {
            Tone.Ink => (0x1c, 0x22, 0x28),
            Tone.Quiet => (0x4a, 0x55, 0x60),
            Tone.Rule => (0xb4, 0xbb, 0xc2),
            Tone.Paper => (0xff, 0xff, 0xff),
            Tone.Ground => (0xed, 0xf0, 0xf2),
            Tone.Span => (0xd3, 0xdf, 0xe8),
            Tone.Value => (0x16, 0x4a, 0x73),
            Tone.Found => (0x6b, 0x5b, 0x2e),
            Tone.Attention => (0x9c, 0x1c, 0x1c),
            Tone.AttentionGround => (0xfb, 0xec, 0xea),
            _ => null,
        };

    /// <summary>The colour as it is written in a page: <c>#1c2228</c>; <c>none</c> for none.</summary>
    public static string Hex(Tone tone) =>
        Of(tone) is { } colour
            ? string.Create(
                System.Globalization.CultureInfo.InvariantCulture,
                $"#{colour.Red:x2}{colour.Green:x2}{colour.Blue:x2}"
            )
            : "none";
}
