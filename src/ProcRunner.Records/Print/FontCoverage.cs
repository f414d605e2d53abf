using System.Buffers.Binary;
using System.Text;

namespace ProcRunner.Records.Print;

/// <summary>
/// Which characters a font has, from its table of characters (OpenType specification, "cmap", format 4). What it
/// hasn't is written out on paper, since the font would draw an empty box for it.
/// </summary>
internal sealed class FontCoverage
{
    private readonly List<(int First, int Last)> _ranges = [];

    /// <summary>Reads it from a font file.</summary>
    public FontCoverage(ReadOnlySpan<byte> font)
    {
        int tables = BinaryPrimitives.ReadUInt16BigEndian(font[4..]);
        for (int i = 0; i < tables; i++)
        {
            ReadOnlySpan<byte> entry = font[(12 + (i * 16))..];
            if (entry[..4].SequenceEqual("cmap"u8))
            {
                ReadMap(font[(int)BinaryPrimitives.ReadUInt32BigEndian(entry[8..])..]);
            }
        }
    }

    /// <summary>The text with every character that the font hasn't written out, as in <c>\u4e2d</c>.</summary>
    public string Fit(string text)
    {
        if (text.AsSpan().IndexOfAnyExceptInRange(' ', '~') < 0)
        {
            return text;
        }

        StringBuilder fitted = new(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
        {
            if (Has(rune.Value))
            {
                fitted.Append(rune);
            }
            else
            {
                fitted.Append(
                    System.Globalization.CultureInfo.InvariantCulture,
                    $"\\{(rune.IsBmp ? 'u' : 'U')}{rune.Value.ToString(rune.IsBmp ? "x4" : "x8", System.Globalization.CultureInfo.InvariantCulture)}"
                );
            }
        }

        return fitted.ToString();
    }

    private bool Has(int rune) => _ranges.Exists(r => rune >= r.First && rune <= r.Last);

    private void ReadMap(ReadOnlySpan<byte> map)
    {
        int tables = BinaryPrimitives.ReadUInt16BigEndian(map[2..]);
        for (int i = 0; i < tables; i++)
        {
            ReadOnlySpan<byte> table = map[(int)BinaryPrimitives.ReadUInt32BigEndian(map[(4 + (i * 8) + 4)..])..];
            if (BinaryPrimitives.ReadUInt16BigEndian(table) == 4)
            {
                ReadSegments(table);
            }
        }
    }

    // Format 4: the ends of all segments, two bytes, then their starts. Beyond U+FFFF nothing is claimed.
    private void ReadSegments(ReadOnlySpan<byte> table)
    {
        int bytes = BinaryPrimitives.ReadUInt16BigEndian(table[6..]);
        for (int i = 0; i < bytes; i += 2)
        {
            int last = BinaryPrimitives.ReadUInt16BigEndian(table[(14 + i)..]);
            int first = BinaryPrimitives.ReadUInt16BigEndian(table[(16 + bytes + i)..]);
            if (first != 0xffff)
            {
                _ranges.Add((first, last));
            }
        }
    }
}
