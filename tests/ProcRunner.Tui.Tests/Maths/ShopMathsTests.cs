using System.Globalization;
using ProcRunner.ShopMath;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Maths;
using ProcRunner.Tui.Tests.Lines;
using ProcRunner.Tui.Tests.Run;
using ProcRunner.Tui.Tests.Shop;

namespace ProcRunner.Tui.Tests.Maths;

/// <summary>
/// The shop's maths from help: every calculation can be opened and gives there what the table's examples say, whose sources
/// stand beside them; the numbers of the step in hand are filled in; no job is touched.
/// </summary>
public sealed class ShopMathsTests : IDisposable
{
    private readonly ShopBench _bench = new();

    public static TheoryData<string> Functions => [.. WorkFunctions.All.Select(one => one.Name)];

    public void Dispose() => _bench.Dispose();

    [Theory]
    [MemberData(nameof(Functions))]
    public void A_calculation_opened_from_the_menu_gives_what_its_example_says(string name)
    {
        WorkFunction function = WorkFunctions.Find(name)!;
        WorkExample example = function.Examples[0];
        Assert.True(function.Answer(example.Arguments).TryGet(out WorkAnswer? answer, out _));

        Desk desk = new(new FamiliesScreen(Place));
        Open(desk, function);
        foreach (WorkParameter parameter in function.Parameters)
        {
            string value = example.Arguments.FirstOrDefault(one => one.Key == parameter.Name).Value ?? "";
            desk.Type(Typed(parameter, value) + "\n");
        }

        string page = Flat(desk.Draw(200, 200, Look).ToString());
        Assert.Contains($"Worked out: {name.Replace('-', ' ')}", page, StringComparison.Ordinal);
        Assert.All(
            answer.Results,
            one => Assert.Contains(Flat($"{one.Name} {one.Text}"), page, StringComparison.Ordinal)
        );
        Assert.All(
            answer.Steps.SelectMany(step => step.Lines),
            line => Assert.Contains(Flat(line), page, StringComparison.Ordinal)
        );
        Assert.Contains(Flat($"Source: {function.Source}"), page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("families", 80, 24)]
    [InlineData("families", 120, 40)]
    [InlineData("form", 80, 24)]
    [InlineData("form", 120, 40)]
    [InlineData("worked", 80, 24)]
    [InlineData("worked", 120, 40)]
    public void Its_screens_look_like_this(string name, int width, int height)
    {
        using DemoJob job = new();
        job.UpTo("seat cut / recession 1I");
        PadOperator pad = new(job.Job);
        pad.ReadCautions();
        long before = job.Job.State.Sequence;
        pad.Type("/");
        pad.Choose("maths");
        if (name != "families")
        {
            pad.Desk.Type("1\n3\n");
        }

        if (name == "worked")
        {
            pad.Desk.Type("\n\n\n\n\n\n\n");
        }

        ScreenPictures.Match(pad.See(width, height), name, width, height);
        Assert.Equal(before, job.Job.State.Sequence);
    }

    [Fact]
    public void Help_at_a_step_leads_to_it_and_back_to_the_step()
    {
        using DemoJob job = new();
        job.UpTo("seat cut / recession 1I");
        PadOperator pad = new(job.Job);
        pad.ReadCautions();
        string step = pad.See();
        pad.Type("/");
        pad.Choose("why");
        Assert.Contains("1 Enter: shop maths with these numbers", pad.See(), StringComparison.Ordinal);
        pad.Desk.Type("1\n");
        Assert.Contains("with this step's numbers", pad.See(), StringComparison.Ordinal);
        pad.Desk.Type("0\n");
        pad.Type("/");
        Assert.Equal(step, pad.See());
    }

    // 0.052 - 0.023 = 0.029, by hand.
    [Fact]
    public void A_bare_number_has_the_usual_unit_and_one_number_can_be_changed_after_the_working()
    {
        Desk desk = new(new FamiliesScreen(Place));
        Open(desk, WorkFunctions.Find("readout-target")!);
        desk.Type(".023\n.052\n.0005\n1\n1\n");
        foreach (WorkParameter _ in WorkFunctions.Find("readout-target")!.Parameters.Skip(5))
        {
            desk.Type("\n");
        }

        Assert.Contains("target 0.0290 in", Flat(See(desk)), StringComparison.Ordinal);

        desk.Type("0\n\n.053\n");
        foreach (WorkParameter _ in WorkFunctions.Find("readout-target")!.Parameters.Skip(2))
        {
            desk.Type("\n");
        }

        Assert.Contains("target 0.0300 in", Flat(See(desk)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_wrong_unit_is_refused_at_its_line_and_what_was_typed_stays()
    {
        Desk desk = new(new FamiliesScreen(Place));
        Open(desk, WorkFunctions.Find("readout-target")!);
        desk.Type("5 lbf\n");

        string screen = Flat(See(desk));
        Assert.Contains("5 lbf", screen, StringComparison.Ordinal);
        Assert.Contains("> measured", screen, StringComparison.Ordinal);
        Assert.Contains("length", screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_value_that_makes_no_sense_is_refused_at_its_own_line()
    {
        WorkFunction function = WorkFunctions.Find("diameter-growth")!;
        Desk desk = new(new FamiliesScreen(Place));
        Open(desk, function);
        desk.Type(".1\n90\n");

        Assert.Contains("> seat angle", Flat(See(desk)), StringComparison.Ordinal);
        Assert.Contains("90", Flat(See(desk)), StringComparison.Ordinal);
    }

    [Fact]
    public void Letters_look_for_a_calculation()
    {
        Desk desk = new(new FamiliesScreen(Place));
        Assert.Contains("coil bind", See(desk.Type("coil bind\n")), StringComparison.OrdinalIgnoreCase);
        desk.Type("0\n");
        Assert.Contains("No calculation has zebra", See(desk.Type("zebra\n")), StringComparison.Ordinal);
    }

    // 2 x 0.10 mm / tan 45 deg = 0.20 mm, by hand.
    [Fact]
    public void In_line_mode_a_calculation_is_worked_without_touching_the_job()
    {
        (int status, string output) = DemoBench.Run(
            DemoRun.Shared.Before(1),
            "work diameter-growth depth=0.10 mm seat-angle=45 deg\nwork diameter-growth depth=1 lbf\nwork zebra\nwork diameter-growth\n"
        );

        Assert.Equal(0, status);
        Assert.Contains("    = 0.20 mm", output, StringComparison.Ordinal);
        Assert.Contains("1 lbf", output, StringComparison.Ordinal);
        Assert.Contains("There is no function zebra", output, StringComparison.Ordinal);
        Assert.Contains("example: work diameter-growth depth=", output, StringComparison.Ordinal);
    }

    private Look Look => _bench.Look;

    private MathsDesk Place => new(_bench.Session, IsPractice: false, IsInch: true, []);

    private string See(Desk desk) => desk.Draw(80, 24, Look).ToString();

    private static string Flat(string text) =>
        string.Join(' ', text.Split([' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));

    // Family and calculation by their numbers, as they stand in the lists.
    private static void Open(Desk desk, WorkFunction function)
    {
        string[] families = [.. WorkFunctions.All.Select(one => one.Family).Distinct()];
        string[] names = [.. WorkFunctions.All.Where(one => one.Family == function.Family).Select(one => one.Name)];
        int family = Array.IndexOf(families, function.Family) + 1;
        int name = Array.IndexOf(names, function.Name) + 1;
        desk.Type(string.Create(CultureInfo.InvariantCulture, $"{family}\n{name}\n"));
    }

    // A word is chosen by its number; an optional one has "none" before its words.
    private static string Typed(WorkParameter parameter, string value)
    {
        if (parameter.Takes is not WorkTakes.Word word || value.Length == 0)
        {
            return value;
        }

        int index = word
            .Choices.ToList()
            .FindIndex(one => string.Equals(one, value, StringComparison.OrdinalIgnoreCase));
        return (index + 1 + (parameter.IsOptional ? 1 : 0)).ToString(CultureInfo.InvariantCulture);
    }
}
