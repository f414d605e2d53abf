using System.Collections.Immutable;
using System.CommandLine;
using ProcRunner.People;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Trail;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary><c>find TEXT</c>: jobs by whatever is known of them.</summary>
internal static class FindVerb
{
    private static readonly (string Name, JobField Field, string Description)[] Fields =
    [
        ("--stamp", JobField.Stamp, "a stamp or a piece of it; one that was hard to read finds those like it"),
        ("--customer", JobField.Customer, "whose head it is"),
        ("--head", JobField.Head, "the head family"),
        ("--part", JobField.Part, "a part's number or name"),
        ("--lot", JobField.Lot, "a part's lot"),
        ("--gauge", JobField.Gauge, "a gauge's id"),
        ("--cutter", JobField.Cutter, "a cutter named in a remark"),
        ("--person", JobField.Person, "a person's id or name"),
        ("--proof", JobField.Proof, "the proof code on a record"),
        ("--note", JobField.Note, "words of a note, remark, complaint or reason"),
    ];

    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Argument<string?> text = new("text")
        {
            Description =
                "looked for everywhere: stamp, customer, head, part, lot, gauge, cutter, person, notes, proof code",
            Arity = ArgumentArity.ZeroOrOne,
        };
        (JobField Field, Option<string?> Option)[] fields =
        [
            .. Fields.Select(f =>
                (f.Field, new Option<string?>(f.Name) { Description = f.Description, HelpName = "text" })
            ),
        ];
        Option<string?> from = DayOption.Create("--from", "jobs on which something was done on this day or later");
        Option<string?> to = DayOption.Create("--to", "jobs that were opened on this day or before");
        Option<bool> json = JsonOption.Create();
        Command verb = new("find", "find jobs; the best first. All that is given must fit") { text };
        foreach ((_, Option<string?> option) in fields)
        {
            verb.Options.Add(option);
        }

        verb.Options.Add(from);
        verb.Options.Add(to);
        verb.Options.Add(json);
        verb.SetAction(parsed =>
        {
            (DateTimeOffset? since, string fault) = DayOption.Begin(parsed.GetValue(from));
            (DateTimeOffset? before, string fault2) = DayOption.Begin(parsed.GetValue(to), daysLater: 1);
            JobQuery query = new()
            {
                Text = parsed.GetValue(text) ?? "",
                In =
                [
                    .. fields
                        .Where(f => !string.IsNullOrWhiteSpace(parsed.GetValue(f.Option)))
                        .Select(f => (f.Field, parsed.GetValue(f.Option)!)),
                ],
                From = since,
                Before = before,
            };
            bool empty = query.Text.Length == 0 && query.In.IsEmpty && since is null && before is null;
            return fault.Length + fault2.Length > 0 ? Say.Usage(fault + fault2, "")
                : empty ? Say.Usage("Say what to find.", "procrunner find --help lists what can be looked for.")
                : IndexedStore.Ask(
                    StoreOption.ToRead(parsed),
                    (reader, index) => Tell(reader, index, WithIds(query, reader), parsed.GetValue(json))
                );
        });
        return verb;
    }

    private static int Tell(StoreReader reader, SearchIndex index, JobQuery query, bool json)
    {
        ExportedJob[] elsewhere = query is { Text.Length: > 0, In.IsEmpty: true, From: null, Before: null }
            ? JobsFromElsewhere.Find(reader, query.Text.Trim())
            : [];
        (ImmutableArray<JobHit> hits, int count) = index.Find(query);
        if (json)
        {
            Say.Json(Json.ListOf([.. hits.Select(Found), .. elsewhere.Select(JobListing.Json)]));
            return hits.IsEmpty && elsewhere.Length == 0 ? Status.No : Status.Done;
        }

        foreach (string line in JobListing.Lines(hits).Concat(elsewhere.Select(JobListing.Line)))
        {
            Say.Line(line);
        }

        if (count > hits.Length)
        {
            Say.Aside(
                $"{JobListing.Number(hits.Length)} of {JobListing.Number(count)} are shown; say more to narrow it."
            );
        }

        return hits.IsEmpty && elsewhere.Length == 0 ? Status.No : Status.Done;
    }

    private static Json Found(JobHit hit) =>
        Json.MapOf([
            .. JobListing.Json(hit.Job).Items.Select(i => (i.Key, i.Value)),
            ("rank", new Json.Whole(hit.Rank)),
            ("found-in", new Json.Text(hit.Field?.ToString().ToLowerInvariant() ?? "")),
            ("found", new Json.Text(hit.Found)),
        ]);

    // Entries carry ids; a person's name is known to the shop book.
    private static JobQuery WithIds(JobQuery query, StoreReader reader)
    {
        if (!query.In.Any(i => i.Field == JobField.Person))
        {
            return query;
        }

        ShopState shop = reader.ReadShop().Shop;
        return query with
        {
            In = [.. query.In.Select(i => i.Field == JobField.Person ? (i.Field, IdOf(shop, i.Text)) : i)],
        };
    }

    private static string IdOf(ShopState shop, string text)
    {
        Person[] named =
        [
            .. shop.People.Values.Where(p => p.Name.Contains(text.Trim(), StringComparison.OrdinalIgnoreCase)),
        ];
        return named is [var one] && !shop.People.ContainsKey(text.Trim()) ? one.Id : text;
    }
}
