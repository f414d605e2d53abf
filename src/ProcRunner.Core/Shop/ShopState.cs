using System.Collections.Immutable;
using ProcRunner.People;
using ProcRunner.Trail;

namespace ProcRunner.Shop;

/// <summary>What the shop book comes to: people, gauges, the readout, and the jobs with their anchors.</summary>
/// <remarks>An event that this program doesn't know changes nothing, so that an older program reads a newer book.</remarks>
public sealed record ShopState
{
    /// <summary>Before the first entry.</summary>
    public static ShopState Empty { get; } = new();

    /// <summary>The shop's name.</summary>
    public string Name { get; init; } = "";

    /// <summary>How far the book has got.</summary>
    public BookMark Mark { get; init; } = BookMark.None;

    /// <summary>Everyone who ever could sign, by id.</summary>
    public ImmutableSortedDictionary<string, Person> People { get; init; } =
        ImmutableSortedDictionary.Create<string, Person>(StringComparer.Ordinal);

    /// <summary>The gauges, by id.</summary>
    public ImmutableSortedDictionary<string, Gauge> Gauges { get; init; } =
        ImmutableSortedDictionary.Create<string, Gauge>(StringComparer.Ordinal);

    /// <summary>The machine's readout, null until it was set up.</summary>
    public Readout? Readout { get; init; }

    /// <summary>The jobs, by id.</summary>
    public ImmutableSortedDictionary<string, ShopJob> Jobs { get; init; } =
        ImmutableSortedDictionary.Create<string, ShopJob>(StringComparer.Ordinal);

    /// <summary>Ends of trails that were put aside.</summary>
    public ImmutableList<ShopEvent.TornTailFound> TornTails { get; init; } = [];

    /// <summary>The id of the first lead, whose key the others hang on; null until there is one. It never changes.</summary>
    public string? RootId { get; init; }

    /// <summary>The first lead, null until there is one.</summary>
    public Person? Root => RootId is null ? null : People.GetValueOrDefault(RootId);

    /// <summary>The jobs with this stamp, whatever the case of its letters.</summary>
    public IEnumerable<ShopJob> JobsWithStamp(string stamp) =>
        Jobs.Values.Where(job => string.Equals(job.Stamp, stamp, StringComparison.OrdinalIgnoreCase));

    /// <summary>The state after one more entry of the book.</summary>
    public ShopState After(TrailEntry entry, Digest digest)
    {
        ArgumentNullException.ThrowIfNull(entry);
        ShopState state = this;
        foreach (Json.Map map in entry.Events)
        {
            if (ShopEventFormat.Read(map) is { } shopEvent)
            {
                state = state.After(shopEvent, entry.At);
            }
        }

        return state with
        {
            Mark = new(entry.Sequence, digest),
        };
    }

    /// <summary>The people whose certificates don't lead to the root, by id; empty when all do.</summary>
    public IEnumerable<string> Uncertified()
    {
        foreach (Person person in People.Values)
        {
            if (!IsCertified(person))
            {
                yield return person.Id;
            }
        }
    }

    /// <summary>A number for a new job that no job has: one more than the highest so far.</summary>
    public string ProposeStamp()
    {
        const long first = 1001;
        long highest = first - 1;
        foreach (ShopJob job in Jobs.Values)
        {
            bool isNumber = job.Stamp.Length is > 0 and < 16 && !job.Stamp.AsSpan().ContainsAnyExceptInRange('0', '9');
            highest = isNumber
                ? Math.Max(highest, long.Parse(job.Stamp, System.Globalization.CultureInfo.InvariantCulture))
                : highest;
        }

        return (highest + 1).ToString(System.Globalization.CultureInfo.InvariantCulture);
    }

    private bool IsCertified(Person person)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        for (Person at = person; seen.Add(at.Id); )
        {
            if (!People.TryGetValue(at.CertifiedBy, out Person? certifier) || !PersonKeys.IsCertified(at, certifier))
            {
                return false;
            }

            if (at.IsRoot)
            {
                return at.Id == RootId;
            }

            at = certifier;
        }

        return false;
    }

    private ShopState After(ShopEvent shopEvent, DateTimeOffset at) =>
        shopEvent switch
        {
            ShopEvent.ShopFounded e => this with { Name = e.Name },
            ShopEvent.PersonAdded e => WithPerson(e.Person),
            ShopEvent.PersonRetired e when People.TryGetValue(e.Id, out Person? person) => this with
            {
                People = People.SetItem(e.Id, person with { RetiredAt = at }),
            },
            ShopEvent.PinChanged e when People.TryGetValue(e.Id, out Person? person) => this with
            {
                People = People.SetItem(e.Id, person with { WrappedKey = e.WrappedKey }),
            },
            ShopEvent.GaugeAdded e => this with { Gauges = Gauges.SetItem(e.Gauge.Id, e.Gauge) },
            ShopEvent.GaugeChanged e => this with { Gauges = Gauges.SetItem(e.Gauge.Id, e.Gauge) },
            ShopEvent.ReadoutSet e => this with { Readout = e.Readout },
            ShopEvent.JobOpened e => this with { Jobs = Jobs.SetItem(e.Job, new(e.Job, e.Stamp, e.Texts, [], false)) },
            ShopEvent.JobAnchored e => Anchored(e.Job, new(e.Sequence, e.Digest, e.Why), closed: false),
            ShopEvent.JobClosedOut e => Anchored(e.Job, new(e.Sequence, e.Digest, Anchor.ClosedOut), closed: true),
            ShopEvent.TornTailFound e => this with { TornTails = TornTails.Add(e) },
            _ => this,
        };

    // A key once known under an id stays: what it signed must stay checkable.
    private ShopState WithPerson(Person person) =>
        People.TryGetValue(person.Id, out Person? known) && known.PublicKey != person.PublicKey
            ? this
            : this with
            {
                People = People.SetItem(person.Id, person),
                RootId = RootId ?? (person.IsRoot ? person.Id : null),
            };

    private ShopState Anchored(string id, JobAnchor anchor, bool closed) =>
        Jobs.TryGetValue(id, out ShopJob? job)
            ? this with
            {
                Jobs = Jobs.SetItem(
                    id,
                    job with
                    {
                        Anchors = job.Anchors.Add(anchor),
                        IsClosedOut = job.IsClosedOut || closed,
                    }
                ),
            }
            : this;
}
