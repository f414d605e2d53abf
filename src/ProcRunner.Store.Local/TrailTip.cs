using System.Text;

namespace ProcRunner.Store.Local;

/// <summary>A trail's length and the digest at its end: enough to see that it went on.</summary>
internal sealed record TrailTip(long Length, string Digest)
{
    /// <summary>Reads a trail's tip; what stands in the digest's place is taken as it is.</summary>
    public static TrailTip Read(string path)
    {
        using FileStream file = Disk.OpenForReading(path);
        byte[] end = new byte[(int)Math.Min(file.Length, Trail.Digest.HexLength + 1)];
        file.Position = file.Length - end.Length;
        int read = file.ReadAtLeast(end, end.Length, throwOnEndOfStream: false);
        return new(file.Length, Encoding.Latin1.GetString(end.AsSpan(0, read)).TrimEnd('\n'));
    }
}
