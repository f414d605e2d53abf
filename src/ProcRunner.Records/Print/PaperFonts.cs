using PdfSharp.Fonts;

namespace ProcRunner.Records.Print;

/// <summary>
/// The two fonts that every paper embeds: Liberation Sans (SIL Open Font License 1.1, its text beside them). They come with
/// the program, so a paper looks the same on every machine.
/// </summary>
internal sealed class PaperFonts : IFontResolver
{
    /// <summary>The family's name.</summary>
    public const string Family = "Liberation Sans";

    private const string Regular = "LiberationSans-Regular.ttf";
    private const string Bold = "LiberationSans-Bold.ttf";
    private static readonly Lock Guard = new();
    private static bool _isUsed;

    private PaperFonts() { }

    /// <summary>Has the library use these fonts; as often as one likes.</summary>
    public static void Use()
    {
        lock (Guard)
        {
            if (!_isUsed)
            {
                GlobalFontSettings.FontResolver = new PaperFonts();
                _isUsed = true;
            }
        }
    }

    /// <summary>The font's file.</summary>
    public static byte[] Read(bool isBold) => ReadFile(isBold ? Bold : Regular);

    /// <inheritdoc/>
    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
        new(isBold ? Bold : Regular);

    /// <inheritdoc/>
    public byte[]? GetFont(string faceName) => ReadFile(faceName);

    private static byte[] ReadFile(string name)
    {
        using Stream stream = typeof(PaperFonts).Assembly.GetManifestResourceStream(name)!;
        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
