using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Endurance;

/// <summary>
/// Exported jobs whose chain and last line are right and whose content is not: what somebody could write who knows the format.
/// </summary>
internal sealed class HostileJobs(ReleasedJob job, Random random, HostileText text)
{
    private const int MostEntries = 60;

    // What can stand in an event in place of something of its kind.
    private readonly string[] _words =
    [
        .. job.Plan.Steps.Select(step => step.FullName),
        .. job.Plan.Positions.Select(position => position.Name),
        "head",
        "0.05 in",
        "moss",
        "released",
        "sign",
    ];

    /// <summary>A file.</summary>
    public byte[] Next()
    {
        // A short trail is checked faster; where it begins to be hostile doesn't depend on its length.
        int length = random.Next(1, MostEntries);
        int from = random.Next(job.Trail.Count - length);
        List<TrailEntry> entries =
        [
            job.Trail[0].Entry,
            .. job.Trail.Skip(random.Next(3) == 0 ? from : 1).Take(length).Select(line => line.Entry),
        ];
        for (int i = random.Next(1, 4); i > 0; i--)
        {
            Spoil(entries);
        }

        ExportedJob made = job.Exported with
        {
            Trail = Chained(entries),
            Stamp = random.Next(10) == 0 ? Harmless(text.Next()) : job.Exported.Stamp,
            Shop = random.Next(10) == 0 ? Harmless(text.Next()) : job.Exported.Shop,
            Book = random.Next(4) == 0 ? job.Exported.Book : [],
            People = random.Next(10) == 0 ? [.. job.Exported.People.Select(Spoiled)] : job.Exported.People,
        };
        return ExportFile.Write(made);
    }

    private void Spoil(List<TrailEntry> entries)
    {
        int at = random.Next(entries.Count);
        switch (random.Next(6))
        {
            case 0:
                entries.RemoveAt(entries.Count > 1 ? at : 0);
                if (entries.Count == 0)
                {
                    entries.Add(job.Trail[0].Entry);
                }

                break;
            case 1:
                entries.Insert(random.Next(entries.Count), entries[at]);
                break;
            case 2:
                entries[at] = entries[at] with { Events = job.Trail[random.Next(job.Trail.Count)].Entry.Events };
                break;
            case 3:
                entries[at] = entries[at] with { Operator = Harmless(text.Next()), Bench = Harmless(text.Next()) };
                break;
            default:
                entries[at] = entries[at] with
                {
                    Events = [.. entries[at].Events.Select(map => (Json.Map)Spoiled(map))],
                };
                break;
        }
    }

    private ExportedPerson Spoiled(ExportedPerson person) => person with { Event = (Json.Map)Spoiled(person.Event) };

    // One value in a few is exchanged for one of its kind, seldom of another.
    private Json Spoiled(Json value) =>
        value switch
        {
            Json.Map map => Json.MapOf([.. map.Items.Select(i => (i.Key, Spoiled(i.Value)))]),
            Json.List list => random.Next(8) == 0
                ? Json.ListOf([.. list.Items.Skip(1)])
                : Json.ListOf([.. list.Items.Select(Spoiled)]),
            _ when random.Next(12) > 0 => value,
            Json.Text => random.Next(4) == 0 ? Json.Nothing : new Json.Text(Harmless(text.NextOr(_words))),
            Json.Whole => new Json.Whole(random.NextInt64(-3, Json.LargestWhole)),
            Json.Flag flag => new Json.Flag(!flag.Value),
            _ => new Json.Text("something"),
        };

    private static string Harmless(string hostile) =>
        // A lone surrogate can't be written as UTF-8 at all; everything else can, and is.
        ProcRunner.Text.SafeText.IsWellFormed(hostile)
            ? hostile
            : "\u001b[2J";

    private static ReadOnlyMemory<byte> Chained(List<TrailEntry> entries)
    {
        List<byte> trail = [];
        Digest previous = Digest.Zero;
        for (int i = 0; i < entries.Count; i++)
        {
            byte[] line = TrailLine.Encode(
                entries[i] with
                {
                    Sequence = i + 1,
                    Previous = previous,
                    Opening = i == 0 ? entries[i].Opening : null,
                    Events = entries[i].Events.IsEmpty ? [Json.MapOf()] : entries[i].Events,
                }
            );
            previous = TrailLine.DigestOf(line);
            trail.AddRange(line);
        }

        return trail.ToArray();
    }
}
