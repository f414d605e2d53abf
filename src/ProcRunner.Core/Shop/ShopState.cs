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

    /// <summary>Where the shop is found and called, as it stands on its records; empty until it is set.</summary>
    public string Contact { get; init; } = "";

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

    /// <summary>The id of the first lead, whose key the others hang on; of the latest where the shop began anew. Null before.</summary>
    public string? RootId { get; init; }

    /// <summary>The first lead, and every later one that the shop began anew with.</summary>
    public ImmutableList<ShopRoot> Roots { get; init; } = [];

    /// <summary>People as they were under a key that was replaced since, or as leads that they no longer are; the oldest first.</summary>
    public ImmutableList<Person> FormerKeys { get; init; } = [];

    /// <summary>Wrong PINs since the last right one, by person's id; nobody who has none.</summary>
    public ImmutableSortedDictionary<string, WrongPins> WrongPins { get; init; } =
        ImmutableSortedDictionary.Create<string, WrongPins>(StringComparer.Ordinal);

    /// <summary>Minutes without a key after which the screen asks who works; 0: never.</summary>
    public long IdleMinutes { get; init; }

    /// <summary>The first lead, null until there is one.</summary>
    public Person? Root => RootId is null ? null : People.GetValueOrDefault(RootId);

    /// <summary>The jobs with this stamp, whatever the case of its letters.</summary>
    public IEnumerable<ShopJob> JobsWithStamp(string stamp) =>
        Jobs.Values.Where(job => string.Equals(job.Stamp, stamp, StringComparison.OrdinalIgnoreCase));

    /// <summary>The job with this stamp, or with this proof code however it is typed; null when there is none.</summary>
    public ShopJob? FindJob(string stampOrProof) =>
        JobsWithStamp(stampOrProof).FirstOrDefault()
        ?? (
            ProofCode.TryRead(stampOrProof, out _) is { } code
                ? Jobs.Values.FirstOrDefault(j =>
                    j is { IsClosedOut: true, LastAnchor: { } last } && code.Matches(last.Digest)
                )
                : null
        );

    /// <summary>The state after one more entry of the book.</summary>
    public ShopState After(TrailEntry entry, Digest digest)
    {
        ArgumentNullException.ThrowIfNull(entry);
        ShopState state = this;
        foreach (Json.Map map in entry.Events)
        {
            if (ShopEventFormat.Read(map) is { } shopEvent)
            {
                state = state.After(shopEvent, entry);
            }
        }

        return state with
        {
            Mark = new(entry.Sequence, digest),
        };
    }

    /// <summary>
    /// The people whose certificates don't lead to a first lead, by id; empty when all do. Whether each change was signed for
    /// is <see cref="PeopleCheck"/>'s to say.
    /// </summary>
    public IEnumerable<string> Uncertified() => People.Values.Where(p => !IsCertified(p)).Select(p => p.Id);

    /// <summary>
    /// A person, who certified their key, who certified that one's, and so on to a first lead; each as they were when they did.
    /// It ends early where a certifier is unknown.
    /// </summary>
    public IReadOnlyList<Person> ChainOf(Person person)
    {
        ArgumentNullException.ThrowIfNull(person);
        List<Person> chain = [person];
        while (!chain[^1].IsRoot && Certifier(chain[^1]) is { } certifier && !chain.Contains(certifier))
        {
            chain.Add(certifier);
        }

        return chain;
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

    private Person? Certifier(Person person) =>
        FormerKeys
            .Append(People.GetValueOrDefault(person.CertifiedBy))
            .LastOrDefault(p =>
                p is { Role: Role.Lead } && p.Id == person.CertifiedBy && p.PublicKey == person.CertifierKey
            );

    private bool IsCertified(Person person)
    {
        IReadOnlyList<Person> chain = ChainOf(person);
        return Roots.Exists(root => root.Lead.PublicKey == chain[^1].PublicKey)
            && chain.Zip(chain.Skip(1).Append(chain[^1])).All(link => PersonKeys.IsCertified(link.First, link.Second));
    }

    private ShopState After(ShopEvent shopEvent, TrailEntry entry) =>
        shopEvent switch
        {
            ShopEvent.ShopFounded e => this with { Name = e.Name },
            ShopEvent.PersonAdded e => WithPerson(e.Person, entry),
            ShopEvent.PersonChanged e => Changed(e),
            ShopEvent.PersonLeft e => With(e.Id, p => p with { RetiredAt = entry.At }),
            ShopEvent.PersonRetired e => With(e.Id, p => p with { RetiredAt = entry.At }),
            ShopEvent.PinSet e => With(e.Id, p => p with { WrappedKey = e.WrappedKey }),
            ShopEvent.PinChanged e => With(e.Id, p => p with { WrappedKey = e.WrappedKey }),
            ShopEvent.PinReset e => WithKey(e),
            ShopEvent.FirstLeadAnew e => WithRoot(e.Person, entry, e.Reason),
            ShopEvent.PinRefused e => this with { WrongPins = WrongPins.SetItem(e.Id, new(e.InARow, entry.At)) },
            ShopEvent.PinAccepted e => this with { WrongPins = WrongPins.Remove(e.Id) },
            ShopEvent.IdleSet e => this with { IdleMinutes = e.Minutes },
            ShopEvent.ContactSet e => this with { Contact = e.Contact },
            ShopEvent.GaugeAdded e => this with { Gauges = Gauges.SetItem(e.Gauge.Id, e.Gauge) },
            ShopEvent.GaugeChanged e => this with { Gauges = Gauges.SetItem(e.Gauge.Id, e.Gauge) },
            ShopEvent.ReadoutSet e => this with { Readout = e.Readout },
            ShopEvent.JobOpened e => this with { Jobs = Jobs.SetItem(e.Job, new(e.Job, e.Stamp, e.Texts, [], false)) },
            ShopEvent.JobAnchored e => Anchored(e.Job, new(e.Sequence, e.Digest, e.Why), closed: false),
            ShopEvent.JobClosedOut e => Anchored(e.Job, new(e.Sequence, e.Digest, Anchor.ClosedOut), closed: true),
            ShopEvent.TornTailFound e => this with { TornTails = TornTails.Add(e) },
            _ => this,
        };

    private ShopState With(string id, Func<Person, Person> change) =>
        People.TryGetValue(id, out Person? person) ? this with { People = People.SetItem(id, change(person)) } : this;

    // Whom somebody vouched for as a lead stays vouched for.
    private ShopState Changed(ShopEvent.PersonChanged e)
    {
        ShopState changed = With(
            e.Id,
            p =>
                p with
                {
                    Name = e.Name,
                    Role = e.Role,
                    CertifiedBy = e.Act.By,
                    CertifierKey = KeyOf(e.Act.By),
                    Certificate = e.Certificate,
                }
        );
        return People.TryGetValue(e.Id, out Person? before) && before.Role == Role.Lead && e.Role != Role.Lead
            ? changed with
            {
                FormerKeys = FormerKeys.Add(before),
            }
            : changed;
    }

    // The key until now goes on counting for what it signed.
    private ShopState WithKey(ShopEvent.PinReset e)
    {
        ShopState reset = With(
            e.Id,
            p =>
                p with
                {
                    PublicKey = e.PublicKey,
                    WrappedKey = e.WrappedKey,
                    CertifiedBy = e.Act.By,
                    CertifierKey = KeyOf(e.Act.By),
                    Certificate = e.Certificate,
                }
        );
        return People.TryGetValue(e.Id, out Person? before)
            ? reset with
            {
                FormerKeys = FormerKeys.Add(before),
                WrongPins = WrongPins.Remove(e.Id),
            }
            : this;
    }

    // A key once known under an id stays: what it signed must stay checkable.
    private ShopState WithPerson(Person person, TrailEntry entry)
    {
        if (People.TryGetValue(person.Id, out Person? known) && known.PublicKey != person.PublicKey)
        {
            return this;
        }

        return person.IsRoot && RootId is null
            ? WithRoot(person, entry, "")
            : this with
            {
                People = People.SetItem(
                    person.Id,
                    person with
                    {
                        CertifierKey = person.IsRoot ? person.PublicKey : KeyOf(person.CertifiedBy),
                    }
                ),
            };
    }

    // An id that is known keeps its person.
    private ShopState WithRoot(Person person, TrailEntry entry, string reason)
    {
        Person lead = person with { CertifierKey = person.PublicKey };
        return People.ContainsKey(lead.Id)
            ? this
            : this with
            {
                People = People.SetItem(lead.Id, lead),
                RootId = lead.Id,
                Roots = Roots.Add(new(lead, entry.Sequence, entry.At, reason)),
            };
    }

    private string KeyOf(string id) => People.TryGetValue(id, out Person? person) ? person.PublicKey : "";

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
