using System.Collections.Immutable;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>What of the shop book goes with a job that leaves the shop.</summary>
internal static class ShopExcerpt
{
    private const string Wrapped = "wrapped";

    // An event of the book with a public key is read with a wrapped one beside it; this opens with no PIN.
    private static readonly Json.Map NoKey = Json.MapOf(
        ("rounds", new Json.Whole(1)),
        ("salt", new Json.Text("")),
        ("nonce", new Json.Text("")),
        ("sealed", new Json.Text(""))
    );

    /// <summary>The event as this program reads it, with nothing where the wrapped key stood.</summary>
    public static Json.Map WithoutSecret(Json.Map said) =>
        said["key"] is null ? said : Json.MapOf([.. Pairs(said), (Wrapped, NoKey)]);

    /// <summary>What the book says of some people and of everyone who certified them, up to the first lead.</summary>
    public static IEnumerable<ExportedPerson> People(
        ImmutableArray<(TrailEntry Entry, Digest Digest)> book,
        IEnumerable<string> ids
    )
    {
        HashSet<string> wanted = new(ids, StringComparer.Ordinal);
        List<(ExportedPerson Said, string Id)> all =
        [
            .. book.SelectMany(line =>
                line.Entry.Events.Where(IsOfPerson)
                    .Select(said =>
                        (
                            new ExportedPerson(
                                line.Entry.Sequence,
                                line.Digest,
                                line.Entry.Previous,
                                line.Entry.At,
                                Open(said)
                            ),
                            said.TextAt("id")!
                        )
                    )
            ),
        ];
        for (int before = -1; before != wanted.Count; )
        {
            before = wanted.Count;
            wanted.UnionWith(
                all.Where(p => wanted.Contains(p.Id)).Select(p => p.Said.Event.TextAt("by")).OfType<string>()
            );
        }

        return all.Where(p => wanted.Contains(p.Id)).Select(p => p.Said);
    }

    /// <summary>The lines that are about one job and about nothing else.</summary>
    public static IEnumerable<byte[]> Job(ImmutableArray<(TrailEntry Entry, Digest Digest)> book, string jobId) =>
        book.Where(line => line.Entry.Events.All(said => said.TextAt("job") == jobId))
            .Select(line => TrailLine.Encode(line.Entry));

    /// <summary>True for an event that tells of a person and proves something, or that somebody left.</summary>
    public static bool IsOfPerson(Json.Map said) =>
        said.TextAt("id") is not null
        && (said["certificate"] is not null || said.TextAt("e") is "person left" or "person retired");

    /// <summary>True when an event holds what must not leave the shop.</summary>
    public static bool HasSecret(Json.Map said) => said[Wrapped] is not null;

    private static Json.Map Open(Json.Map said) => Json.MapOf([.. Pairs(said)]);

    private static IEnumerable<(string, Json)> Pairs(Json.Map said) =>
        said.Items.Where(item => item.Key != Wrapped).Select(item => (item.Key, item.Value));
}
