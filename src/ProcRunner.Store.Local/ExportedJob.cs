using System.Collections.Immutable;
using ProcRunner.Shop;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>
/// One job on its own: its trail byte for byte, the texts it pins, the people who signed in it with public keys and
/// certificates, and the shop book's entries about this job. How it stands in a file: <see cref="ExportFile"/>.
/// </summary>
/// <remarks>
/// Left out of the shop book are all other jobs and every wrapped private key, which somebody could guess PINs against.
/// The entries between are missing, so that the book's own chain isn't proven by the file; the certificates, the
/// signatures and the trail's chain are.
/// </remarks>
public sealed record ExportedJob : ITrailReader
{
    /// <summary>The job's id.</summary>
    public required string JobId { get; init; }

    /// <summary>Its stamp, as the file's first line says; the trail has the last word.</summary>
    public required string Stamp { get; init; }

    /// <summary>The name of the shop it comes from, as the file says.</summary>
    public required string Shop { get; init; }

    /// <summary>
    /// SHA-256 of the first lead's public key, which the certificates lead up to, as the file says; of more than one where the
    /// shop had to begin anew.
    /// </summary>
    public required ImmutableArray<Digest> Roots { get; init; }

    /// <summary>The pinned texts.</summary>
    public required ImmutableArray<byte[]> Texts { get; init; }

    /// <summary>What the shop book says of the people who signed here and of who certified them, in its order.</summary>
    public required ImmutableArray<ExportedPerson> People { get; init; }

    /// <summary>The lines of the shop book that are about this job alone.</summary>
    public required ImmutableArray<byte[]> Book { get; init; }

    /// <summary>The trail, byte for byte.</summary>
    public required ReadOnlyMemory<byte> Trail { get; init; }

    /// <inheritdoc/>
    public TrailReading ReadTrail(string of) =>
        of == JobId ? ReadJob()
        : of == ProcRunner.Trail.JobId.Shop ? ReadBook()
        : new([], new TrailVerdict.Broken(1, TrailFault.Empty, 0));

    /// <inheritdoc/>
    public byte[]? ReadText(Digest digest) => Texts.FirstOrDefault(text => Digest.Of(text) == digest);

    /// <summary>The shop as far as the file tells.</summary>
    public ShopState ReadShop() =>
        ReadBook().Entries.Aggregate(ShopState.Empty, (shop, line) => shop.After(line.Entry, line.Digest)) with
        {
            Name = Shop,
        };

    private TrailReading ReadJob()
    {
        var entries = ImmutableArray.CreateBuilder<(TrailEntry, Digest)>();
        TrailVerdict verdict = TrailCheck.Verify(Trail.Span, JobId, (entry, digest) => entries.Add((entry, digest)));
        return new(entries.DrainToImmutable(), verdict);
    }

    // The book with holes: good to look people up in, no proof of its own.
    private TrailReading ReadBook()
    {
        IEnumerable<(TrailEntry Entry, Digest Digest)> lines = Book.Select(line => (TrailLine.Decode(line).Entry, line))
            .Where(pair => pair.Entry is not null)
            .Select(pair => (pair.Entry!, TrailLine.DigestOf(pair.line)));
        IEnumerable<(TrailEntry Entry, Digest Digest)> people = People
            .GroupBy(person => person.Sequence)
            .Select(group => (EntryOf([.. group]), group.First().Digest));
        ImmutableArray<(TrailEntry Entry, Digest Digest)> all =
        [
            .. lines.Concat(people).OrderBy(line => line.Entry.Sequence),
        ];
        return new(all, new TrailVerdict.Holds(all.Length, all.IsEmpty ? Digest.Zero : all[^1].Digest));
    }

    private static TrailEntry EntryOf(ExportedPerson[] said) =>
        new()
        {
            Of = ProcRunner.Trail.JobId.Shop,
            Sequence = said[0].Sequence,
            Previous = said[0].Previous,
            At = said[0].At,
            Offset = TimeSpan.Zero,
            Operator = "",
            Bench = "",
            Book = BookMark.None,
            Events = [.. said.Select(person => ShopExcerpt.WithoutSecret(person.Event))],
        };
}
