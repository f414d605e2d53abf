using System.Text.Json;
using ProcRunner.ShopMath;
using ProcRunner.Testing;

namespace ProcRunner.EndToEnd.Tests;

/// <summary>The shop's calculator as it is typed. Values are those of the calculations' own tests.</summary>
public sealed class WorkVerbTests : IDisposable
{
    private readonly TempFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    public static TheoryData<string> Families => [.. WorkFunctions.All.Select(one => one.Family).Distinct()];

    [Fact]
    public void Alone_it_lists_every_function_under_its_family()
    {
        BuiltProgram.Ended list = Work();

        Assert.Equal(0, list.Status);
        Assert.All(WorkFunctions.All, one => Assert.Contains($"  {one.Name} ", list.Output, StringComparison.Ordinal));
        Assert.All(
            WorkFunctions.All.Select(one => one.Family),
            one => Assert.Contains($"{one}\n", list.Output.ReplaceLineEndings("\n"), StringComparison.Ordinal)
        );
    }

    // 1.2 / cos 45 deg; 0.0625 / cos 60 deg.
    [Fact]
    public void It_shows_the_steps_in_metric_and_in_inch_units()
    {
        Assert.Equal(
            """
            width = (outer diameter - inner diameter) / (2 x cos(seat angle))
                = (38.0 mm - 35.6 mm) / (2 x cos(45 deg))
                = 1.69706 mm
            """,
            string.Join(
                '\n',
                Lines("seat-width", "outer-diameter=38.0", "mm", "inner-diameter=35.6 mm", "seat-angle=45 deg").Take(3)
            )
        );
        Assert.Equal(
            "    = 0.125 in",
            Lines("seat-width", "outer-diameter=1.5 in", "inner-diameter=1.375 in", "seat-angle=60 deg").ElementAt(2)
        );
    }

    [Fact]
    public void Several_values_with_signs_need_no_quotes() =>
        Assert.Equal(
            "    = 0.04 mm",
            Lines(["flatness", .. "x=0 100 100 0 mm y=0 0 100 100 mm z=0.02 -0.02 0.02 -0.02 mm".Split(' ')])
                .ElementAt(1)
        );

    // The first example of the first function of each family, word by word as a shell hands it over.
    [Theory]
    [MemberData(nameof(Families))]
    public void Every_family_answers_and_refuses_a_wrong_unit_by_name(string family)
    {
        WorkFunction function = WorkFunctions.All.First(one => one.Family == family);
        string[] typed = [.. function.Examples[0].Given.Replace(";", "", StringComparison.Ordinal).Split(' ')];
        WorkParameter parameter = function.Parameters.First(one => one.Takes is not WorkTakes.Word);

        BuiltProgram.Ended answer = Work([function.Name, .. typed, "--json"]);
        Assert.True(answer.Status == 0, answer.ToString());
        using var json = JsonDocument.Parse(answer.Output);
        Assert.True(json.RootElement.GetProperty("results").GetArrayLength() > 0);
        Assert.True(json.RootElement.GetProperty("steps").GetArrayLength() > 0);

        string other = parameter.Takes is WorkTakes.Alike ? $"{parameter.Name}=1 mm 1 N" : $"{parameter.Name}=1 parsec";
        BuiltProgram.Ended refused = Work(function.Name, other);
        Assert.Equal(2, refused.Status);
        Assert.StartsWith(parameter.Name + ":", refused.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_refusal_says_what_was_read_and_what_is_allowed()
    {
        BuiltProgram.Ended bare = Work("diameter-growth", "depth=0.1", "seat-angle=45 deg");
        BuiltProgram.Ended force = Work("diameter-growth", "depth=0.1", "lbf", "seat-angle=45 deg", "--json");
        BuiltProgram.Ended flat = Work("diameter-growth", "depth=0.1 mm", "seat-angle=90 deg");

        Assert.Equal([2, 2, 2], new[] { bare, force, flat }.Select(one => one.Status));
        Assert.StartsWith("depth: 0.1 was read; it has no unit", bare.Errors, StringComparison.Ordinal);
        Assert.Contains("\"read\":\"0.1 lbf\"", force.Output, StringComparison.Ordinal);
        Assert.StartsWith("seat-angle: 90 deg was read; it must lie", flat.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_function_is_no_answer_and_a_known_one_says_what_it_asks_for()
    {
        BuiltProgram.Ended unknown = Work("seat-widths");
        BuiltProgram.Ended known = Work("seat-width");

        Assert.Equal(2, unknown.Status);
        Assert.Contains("seat-width", unknown.Errors, StringComparison.Ordinal);
        Assert.Equal(0, known.Status);
        Assert.Contains("  seat-angle ", known.Output, StringComparison.Ordinal);
        Assert.Equal(2, Work("seat-width", "38").Status);
    }

    private IEnumerable<string> Lines(params string[] words)
    {
        BuiltProgram.Ended ended = Work(words);
        Assert.True(ended.Status == 0, ended.ToString());
        return ended.Output.Split('\n').Select(one => one.TrimEnd('\r'));
    }

    private BuiltProgram.Ended Work(params string[] words) =>
        new BuiltProgram(_folder.Path).Run("", ["work", .. words]);
}
