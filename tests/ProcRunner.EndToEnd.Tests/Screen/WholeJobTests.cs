using System.Text.Json;
using System.Text.Json.Nodes;

namespace ProcRunner.EndToEnd.Tests.Screen;

/// <summary>The demo job from first start to release by the keys of a number pad, on a real terminal.</summary>
public sealed class WholeJobTests
{
    // Times, what hangs on times and ids, and what is random; the digests stand outside the events.
    private static readonly string[] LeftOut = ["time", "signature", "covers"];

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void The_trail_is_that_of_line_mode(int columns, int rows)
    {
        using ShopAtScreen shop = new(columns, rows);
        shop.Start();
        shop.Tmux.WaitFor("demo shop");
        shop.Keys("1\r");
        shop.Tmux.WaitFor("CAUTION");
        foreach (string keys in PadJob.Keys)
        {
            shop.Keys(keys);
        }

        shop.Tmux.WaitFor("RELEASED");
        shop.Tmux.Press("C-q");
        shop.Ended(0);
        Assert.Equal(0, shop.Line("", "verify DEMO"));

        using ShopAtScreen lines = new();
        string entries = File.ReadAllText(Testing.RepoRoot.PathOf("procedures/demo/pump-four.entries"));
        Assert.Equal(0, lines.Line(entries, "run DEMO --plain"));
        Assert.Equal(lines.Trail.Select(Bare), shop.Trail.Select(Bare));
    }

    private static string Bare(string line)
    {
        JsonNode entry = JsonNode.Parse(line.Split('\t')[0])!;
        JsonNode events = entry["ev"]!;
        Strip(events);
        return $"{entry["n"]} {entry["by"]} {entry["mark"]} {events.ToJsonString(JsonSerializerOptions.Default)}";
    }

    private static void Strip(JsonNode? node)
    {
        if (node is JsonObject map)
        {
            Array.ForEach(LeftOut, name => map.Remove(name));
            foreach ((_, JsonNode? value) in map)
            {
                Strip(value);
            }
        }
        else if (node is JsonArray list)
        {
            foreach (JsonNode? item in list)
            {
                Strip(item);
            }
        }
    }
}
