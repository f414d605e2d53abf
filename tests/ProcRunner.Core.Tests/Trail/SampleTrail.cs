using ProcRunner.Trail;

namespace ProcRunner.Tests.Trail;

/// <summary>A small made-up trail.</summary>
internal static class SampleTrail
{
    public const string Job = "mzxw6ytboiaaaaaaaaaaaaaaaa";

    /// <summary>The lines of a trail with so many entries.</summary>
    public static List<byte[]> Lines(int count, string of = Job)
    {
        var lines = new List<byte[]>();
        Digest previous = Digest.Zero;
        for (int i = 1; i <= count; i++)
        {
            byte[] line = TrailLine.Encode(Entry(i, previous, of));
            previous = TrailLine.DigestOf(line);
            lines.Add(line);
        }

        return lines;
    }

    public static TrailEntry Entry(int sequence, Digest previous, string of = Job) =>
        new()
        {
            Of = of,
            Sequence = sequence,
            Previous = previous,
            At = new DateTimeOffset(2026, 11, 25, 1, 2, 3, 456, TimeSpan.Zero).AddSeconds(sequence),
            Offset = TimeSpan.FromMinutes(330),
            Operator = "p1",
            Bench = "bench \"1\"",
            Book = new(7, Digest.Of("book"u8)),
            Opening = sequence == 1 ? new("2418", [Digest.Of("procedure"u8), Digest.Of("head"u8)]) : null,
            Anchor = sequence == 1 ? Anchor.Opened : Anchor.None,
            Events =
            [
                Json.MapOf(
                    ("e", new Json.Text("reading")),
                    ("v", new Json.Text("0.0520")),
                    ("u", new Json.Text("in")),
                    ("note", new Json.Text("größer \u001b 😀")),
                    ("n", new Json.Whole(sequence))
                ),
            ],
        };

    public static byte[] Bytes(IEnumerable<byte[]> lines) => [.. lines.SelectMany(line => line)];
}
