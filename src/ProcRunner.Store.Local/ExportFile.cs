using System.Buffers;
using System.Collections.Immutable;
using System.Globalization;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>
/// The file of an exported job. Lines, each with an LF: a heading; each pinned text in base64; what the shop book says of each
/// person; the book's lines about the job and then the trail, both byte for byte; last the SHA-256 of all that stands
/// before. docs/trail-format.md describes it.
/// </summary>
/// <remarks>Reading demands that writing again gives the same bytes, so that nothing hides in such a file.</remarks>
public static class ExportFile
{
    /// <summary>The largest file, in bytes.</summary>
    public const int MostBytes = 64 * 1024 * 1024;

    /// <summary>The largest pinned text, in bytes: what a procedure's file may have.</summary>
    public const int MostTextBytes = 1024 * 1024;

    private const int MostTexts = 8;
    private const int MostPeople = 10_000;
    private const string What = "procrunner job";

    /// <summary>True when a file begins as such a one does.</summary>
    public static bool LooksLike(ReadOnlySpan<byte> file) => file.StartsWith("{\"book\":"u8);

    /// <summary>The file.</summary>
    public static byte[] Write(ExportedJob job)
    {
        ArgumentNullException.ThrowIfNull(job);
        var file = new ArrayBufferWriter<byte>(job.Trail.Length + 64 * 1024);
        Line(file, Heading(job));
        foreach (byte[] text in job.Texts)
        {
            Line(file, Json.MapOf(("text", new Json.Text(Convert.ToBase64String(text)))));
        }

        foreach (ExportedPerson person in job.People)
        {
            Line(file, Json.MapOf(("person", Person(person))));
        }

        foreach (byte[] line in job.Book)
        {
            file.Write(line);
        }

        file.Write(job.Trail.Span);
        Line(file, Json.MapOf(("end", new Json.Text(Digest.Of(file.WrittenSpan).ToString()))));
        return file.WrittenSpan.ToArray();
    }

    /// <summary>Reads a file; null with the reason when it isn't one, or not as it was written.</summary>
    /// <remarks>Whether the job in it holds isn't looked at: see <see cref="ExportedJobCheck"/>.</remarks>
    public static (ExportedJob? Job, string Fault) Read(ReadOnlyMemory<byte> file)
    {
        if (file.Length > MostBytes)
        {
            return (null, "The file is larger than an exported job can be.");
        }

        if (!LooksLike(file.Span))
        {
            return (null, "The file isn't an exported job.");
        }

        var cursor = new LineCursor(file);
        if (ReadHeading(cursor.Next()) is not { } heading)
        {
            return (
                null,
                "The file's first line isn't one of an exported job that this program reads: it was altered, or is newer."
            );
        }

        (ExportedJob? job, string fault) = ReadBody(heading, ref cursor);
        return job is null ? (null, fault)
            : Digest.Of(file.Span[..cursor.Position]) != End(cursor.Next())
                ? (
                    job,
                    "The file isn't as it was written: its last line isn't the digest of what stands before. It was altered or cut short."
                )
            : !cursor.AtEnd || !Write(job).AsSpan().SequenceEqual(file.Span)
                ? (job, "The file holds something else than an exported job.")
            : (job, "");
    }

    private static (ExportedJob? Job, string Fault) ReadBody(
        (ExportedJob Job, long Book) heading,
        ref LineCursor cursor
    )
    {
        var texts = ImmutableArray.CreateBuilder<byte[]>();
        while (cursor.IsNext("{\"text\":"u8))
        {
            if (texts.Count == MostTexts || Text(cursor.Next()) is not { } text)
            {
                return (null, Numbered(texts.Count + 1, "pinned text can't be read, or there are too many"));
            }

            texts.Add(text);
        }

        var people = ImmutableArray.CreateBuilder<ExportedPerson>();
        while (cursor.IsNext("{\"person\":"u8))
        {
            if (people.Count == MostPeople || Person(cursor.Next()) is not { } person)
            {
                return (null, Numbered(people.Count + 1, "line about a person can't be read, or there are too many"));
            }

            people.Add(person);
        }

        var book = ImmutableArray.CreateBuilder<byte[]>();
        while (book.Count < heading.Book && !cursor.AtEnd && !cursor.IsNext("{\"end\":"u8))
        {
            book.Add(cursor.Next().ToArray());
        }

        int start = cursor.Position;
        while (!cursor.AtEnd && !cursor.IsNext("{\"end\":"u8))
        {
            cursor.Next();
        }

        return (
            heading.Job with
            {
                Texts = texts.DrainToImmutable(),
                People = people.DrainToImmutable(),
                Book = book.DrainToImmutable(),
                Trail = cursor.Since(start),
            },
            ""
        );
    }

    private static string Numbered(int number, string what) =>
        string.Create(CultureInfo.InvariantCulture, $"The file was altered: its {what} (no. {number}).");

    private static Json.Map Heading(ExportedJob job) =>
        Json.MapOf(
            ("book", new Json.Whole(job.Book.Length)),
            ("export", new Json.Text(What)),
            ("format", new Json.Whole(1)),
            ("job", new Json.Text(job.JobId)),
            ("roots", Json.ListOf([.. job.Roots.Select(root => (Json)new Json.Text(root.ToString()))])),
            ("shop", new Json.Text(job.Shop)),
            ("stamp", new Json.Text(job.Stamp))
        );

    private static (ExportedJob Job, long Book)? ReadHeading(ReadOnlySpan<byte> line) =>
        Map(line) is { Items.Length: 7 } map
        && map.TextAt("export") == What
        && map.WholeAt("format") == 1
        && map.WholeAt("book") is { } book and >= 0
        && map.TextAt("job") is { } id
        && JobId.IsValid(id)
        && map["roots"] is Json.List roots
        && roots.Items.All(root => Digest.Parse((root as Json.Text)?.Value) is not null)
        && map.TextAt("shop") is { } shop
        && map.TextAt("stamp") is { } stamp
            ? (
                new()
                {
                    JobId = id,
                    Stamp = stamp,
                    Shop = shop,
                    Roots = [.. roots.Items.Select(root => Digest.Parse(((Json.Text)root).Value)!.Value)],
                    Texts = [],
                    People = [],
                    Book = [],
                    Trail = default,
                },
                book
            )
            : null;

    private static Json.Map Person(ExportedPerson person) =>
        Json.MapOf(
            (
                "at",
                new Json.Text(
                    person.At.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture)
                )
            ),
            ("d", new Json.Text(person.Digest.ToString())),
            ("ev", person.Event),
            ("n", new Json.Whole(person.Sequence)),
            ("prev", new Json.Text(person.Previous.ToString()))
        );

    private static ExportedPerson? Person(ReadOnlySpan<byte> line) =>
        Map(line)?["person"] is Json.Map map
        && DateTimeOffset.TryParseExact(
            map.TextAt("at"),
            "yyyy-MM-dd'T'HH:mm:ss.fff'Z'",
            CultureInfo.InvariantCulture,
            DateTimeStyles.AssumeUniversal,
            out DateTimeOffset at
        )
        && Digest.Parse(map.TextAt("d")) is { } digest
        && Digest.Parse(map.TextAt("prev")) is { } previous
        && map.WholeAt("n") is { } sequence and >= 1
        && map["ev"] is Json.Map said
        && ShopExcerpt.IsOfPerson(said)
        && !ShopExcerpt.HasSecret(said)
            ? new(sequence, digest, previous, at, said)
            : null;

    private static byte[]? Text(ReadOnlySpan<byte> line)
    {
        if (Map(line)?.TextAt("text") is not { } base64 || base64.Length > MostTextBytes / 3 * 4 + 8)
        {
            return null;
        }

        byte[] bytes = new byte[base64.Length];
        return Convert.TryFromBase64String(base64, bytes, out int length) ? bytes[..length] : null;
    }

    private static Digest? End(ReadOnlySpan<byte> line) => Digest.Parse(Map(line)?.TextAt("end"));

    private static Json.Map? Map(ReadOnlySpan<byte> line) =>
        line.Length > 1 && line[^1] == (byte)'\n' ? CanonicalJson.Read(line[..^1]).Value as Json.Map : null;

    private static void Line(ArrayBufferWriter<byte> file, Json value)
    {
        CanonicalJson.Write(value, file);
        file.Write("\n"u8);
    }
}
