using System.CommandLine;
using ProcRunner.Records.History;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary><c>trend READING</c>: what a reading came to over the years.</summary>
internal static class TrendVerb
{
    private const int Width = 78;
    private const int MostNames = 8;

    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Argument<string?> name = new("reading")
        {
            Description = "the reading's name, or a piece of it; none lists the names",
            Arity = ArgumentArity.ZeroOrOne,
        };
        Option<string?> by = new("--by")
        {
            Description = "person, gauge, cutter or head: each for itself",
            HelpName = "what",
        };
        by.AcceptOnlyFromAmong("person", "gauge", "cutter", "head");
        Option<bool> asFound = new("--as-found") { Description = "how the heads came in, not what was made of them" };
        Option<bool> json = JsonOption.Create();
        Command verb = new("trend", "a reading's history: run chart with limits, capability, last out of spec")
        {
            name,
            by,
            asFound,
            json,
        };
        verb.SetAction(parsed =>
            IndexedStore.Ask(
                StoreOption.ToRead(parsed),
                (reader, index) =>
                    Tell(
                        reader,
                        index,
                        parsed.GetValue(name)?.Trim() ?? "",
                        parsed.GetValue(by) ?? "",
                        parsed.GetValue(asFound),
                        parsed.GetValue(json)
                    )
            )
        );
        return verb;
    }

    private static int Tell(StoreReader reader, SearchIndex index, string text, string by, bool asFound, bool json)
    {
        IReadOnlyList<string> names = ReadingHistory.Names(index);
        if (text.Length == 0)
        {
            foreach (string known in names)
            {
                Say.Line(known);
            }

            return Status.Done;
        }

        if (ReadingHistory.Meant(names, text) is not { } name)
        {
            return Say.No(
                $"No one reading is meant by {text}.",
                $"One of: {string.Join(", ", Nearest(names, text))}. procrunner trend alone lists all."
            );
        }

        Trend trend = Trend.Of(ReadingHistory.Of(index, name, asFound), Of(by));
        if (trend.Groups.Count == 0)
        {
            return Say.No($"There is no reading of {name}{(asFound ? " as found" : "")} yet; practice isn't counted.");
        }

        if (json)
        {
            Say.Json(TrendJson.Of(name, trend));
            return Status.Done;
        }

        ShopState shop = reader.ReadShop().Shop;
        Say.Line($"{name}{(asFound ? ", as found" : "")}; practice left out");
        foreach (string line in new TrendWords(trend).Lines(Width, by, id => NameOf(shop, by, id)))
        {
            Say.Line(line);
        }

        return Status.Done;
    }

    // Those that hold what was typed, or most of its words.
    private static IEnumerable<string> Nearest(IReadOnlyList<string> names, string text)
    {
        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return names
            .OrderByDescending(n => n.Contains(text, StringComparison.OrdinalIgnoreCase))
            .ThenByDescending(n => words.Count(w => n.Contains(w, StringComparison.OrdinalIgnoreCase)))
            .Take(MostNames);
    }

    private static TrendBy Of(string by) =>
        by switch
        {
            "person" => TrendBy.Person,
            "gauge" => TrendBy.Gauge,
            "cutter" => TrendBy.Cutter,
            "head" => TrendBy.Head,
            _ => TrendBy.All,
        };

    private static string NameOf(ShopState shop, string by, string id) =>
        by == "person" && shop.People.TryGetValue(id, out People.Person? person) ? $"{id} ({person.Name})"
        : by == "gauge" && shop.Gauges.TryGetValue(id, out Gauge? gauge) ? $"{id} ({gauge.Name})"
        : id;
}
