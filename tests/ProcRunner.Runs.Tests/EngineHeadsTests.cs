namespace ProcRunner.Runs.Tests;

/// <summary>What is set side by side of two heads of one engine: thickness, recession, chamber volume, gasket. All invented.</summary>
public sealed class EngineHeadsTests
{
    private const string Readings = """
        deck thickness: {of: head, measured-in: length, why: it seals}
        recession: {of: position, measured-in: length, why: it matters}
        recession off its kind: {of: position, measured-in: length, why: a spread is no figure to match}
        chamber volume: {of: position, measured-in: cm3, why: compression}
        stem: {of: position, measured-in: length, why: no figure of the engine}
        """;

    private const string Steps = """
        - measure: deck thickness
          window: none
        - measure: recession
          window: none
        - measure: recession off its kind
          window: none
        - measure: chamber volume
          window: none
        - measure: stem
          window: none
        - decide: gasket
          for: head
          choices: [standard, thick]
        """;

    [Fact]
    public void Thickness_recession_volume_and_gasket_are_compared_and_nothing_else()
    {
        Rig here = Head("3.925 in", "0.0560 in", "43.2 cm3", "standard");
        Rig there = Head("3.920 in", "0.0562 in", "43.3 cm3", "thick");

        IReadOnlyList<HeadFigure> figures = HeadComparison.Of(here.State, there.State);

        string[] places = ["I 1", "E 1", "I 2", "E 2"];
        Assert.Equal(
            [
                "deck thickness",
                .. places.Select(p => $"recession, {p}"),
                .. places.Select(p => $"chamber volume, {p}"),
                "gasket",
            ],
            figures.Select(f => f.Of)
        );

        // 3.925 - 3.920 is more than the 0.004 in that the procedure allows, 0.0562 - 0.0560 isn't.
        Assert.Equal(["deck thickness", "gasket"], figures.Where(f => f.Differs).Select(f => f.Of));
        Assert.Equal("0.005 in", figures[0].Difference);
        Assert.Equal("0.0002 in", figures[1].Difference);
        Assert.Equal(("43.2 cm3 at 1I", "43.3 cm3 at 1I"), (figures[5].Here, figures[5].There));
        Assert.Equal("0.1 cm3", figures[5].Difference);
        Assert.Equal(("standard", "thick", "not the same"), (figures[9].Here, figures[9].There, figures[9].Difference));
    }

    [Fact]
    public void What_only_one_head_knows_is_named_with_a_gap()
    {
        Rig here = Head("3.925 in", "0.0560 in", "43.2 cm3", "standard");
        Rig there = new(Procedure, Work.Head(""));

        IReadOnlyList<HeadFigure> figures = HeadComparison.Of(here.State, there.State);

        Assert.Equal(10, figures.Count);
        Assert.All(figures, f => Assert.Equal(("", false), (f.There, f.Differs)));
    }

    private static string Procedure =>
        Work.Procedure(Readings, Steps, "linked head difference: {is: 0.004 in, origin: shop}");

    private static Rig Head(string thickness, string recession, string volume, string gasket)
    {
        Rig rig = new(Procedure, Work.Head(""));
        rig.Enter("deck thickness", thickness);
        foreach (
            (string name, string value) in new[]
            {
                ("recession", recession),
                ("recession off its kind", "0.0001 in"),
                ("chamber volume", volume),
                ("stem", "0.3400 in"),
            }
        )
        {
            foreach (string position in new[] { "1I", "1E", "2I", "2E" })
            {
                rig.Enter($"{name} {position}", value);
            }
        }

        rig.Enter("gasket", gasket);
        return rig;
    }
}
