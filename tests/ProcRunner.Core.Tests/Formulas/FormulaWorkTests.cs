using ProcRunner.Formulas;
using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.Formulas;

/// <summary>The shop's calculations called from formulas.</summary>
public class FormulaWorkTests
{
    public static TheoryData<string, string, string> Examples()
    {
        TheoryData<string, string, string> rows = [];
        foreach (WorkFunction function in WorkFunctions.All.Where(one => one.NotInFormulas is null))
        {
            foreach (WorkExample example in function.Examples)
            {
                rows.Add(function.Name, example.Given, example.Gives);
            }
        }

        return rows;
    }

    public static TheoryData<string> Names => [.. WorkFunctions.All.Select(function => function.Name)];

    /// <summary>
    /// Every example of every calculation, each of its results asked for by a formula: with its values written out where they
    /// fit, and with its values read from names, several of them as a list.
    /// </summary>
    [Theory]
    [MemberData(nameof(Examples))]
    public void An_example_is_what_a_formula_gives(string name, string given, string gives)
    {
        WorkFunction function = WorkFunctions.Find(name)!;
        WorkExample example = new(given, gives, "");
        foreach ((string result, string expected) in example.Results)
        {
            string written = FormulaWorkPage.Written(function, example, result)!;
            if (written.Length <= 500)
            {
                Same(Bench.Empty, written, expected);
            }

            (Bench bench, string read) = FromNames(function, example, result);
            Same(bench, read, expected);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_result_of_a_calculation_is_in_its_table_and_shown_by_an_example(string name)
    {
        WorkFunction function = WorkFunctions.Find(name)!;
        HashSet<string> shown = [];
        foreach (WorkExample example in function.Examples)
        {
            Assert.True(function.Answer(example.Arguments).TryGet(out WorkAnswer? answer, out _));
            foreach (WorkFigure figure in answer.Results)
            {
                WorkGives gives = Assert.Single(function.Gives, one => one.Name == figure.Name);
                Assert.Equal(gives is WorkGives.Text, figure.Value is null);
                Assert.True(
                    gives is not WorkGives.Amount amount || amount.Dimension == figure.Value!.Value.Dimension,
                    $"{name}: {figure}"
                );
                shown.Add(figure.Name);
            }
        }

        if (function.NotInFormulas is null)
        {
            Assert.All(
                function.Gives.Where(one => !one.Name.StartsWith("cylinder ", StringComparison.Ordinal)),
                one => Assert.Contains(one.Name, shown)
            );
        }
    }

    // 38.0 - 35.6 over twice the cosine of 45 deg, by hand: 1.2 x sqrt 2.
    [Fact]
    public void A_calculation_is_part_of_a_larger_formula()
    {
        Bench bench = Bench.Empty.With("outside", "38.0 mm").With("inside", "35.6 mm");
        bench.Gives(
            "0.197056 mm",
            "seat-width(outer-diameter: [outside], inner-diameter: [inside], seat-angle: '45 deg') - '1.5 mm'"
        );
        bench.Gives(
            "1.200 mm",
            "seat-width.axial-part(seat-angle: '45 deg', inner-diameter: [inside], outer-diameter: [outside])"
        );
        bench.Gives(
            "yes",
            "fit-from-limits.kind(hole-smallest: '1 in', hole-largest: '1.001 in', part-smallest: '1.002 in', part-largest: '1.003 in') = 'interference'"
        );
    }

    // Corners of a rectangle, crossed 0.02 up and down: by symmetry the zone is 0.04.
    [Fact]
    public void Places_of_a_reading_are_a_list()
    {
        Bench bench = Bench.Empty.With("deck.each", List("0.02 mm", "-0.02 mm", "0.02 mm", "-0.02 mm"));
        bench.Gives(
            "0.0400 mm",
            "flatness(x: '0 mm', '100 mm', '100 mm', '0 mm', y: '0 mm', '0 mm', '80 mm', '80 mm', z: [deck.each])"
        );
        Assert.Contains(
            "z: 0.020, -0.020, 0.020, -0.020)",
            bench
                .Compiled(
                    "flatness(x: '0 mm', '100 mm', '100 mm', '0 mm', y: '0 mm', '0 mm', '80 mm', '80 mm', z: [deck.each])"
                )
                .Working(bench, Units.Millimetre, 3),
            StringComparison.Ordinal
        );
    }

    // A third of an inch has no end as a decimal; three of them make the whole inch exactly.
    [Fact]
    public void What_goes_in_and_comes_out_is_not_rounded()
    {
        Bench bench = Bench.Empty.With("inch", "1 in");
        bench.GivesExactly("1 in", "3 * target-bore(part: [inch] / 3 + '0.001 in', interference: '0.001 in')");
    }

    [Theory]
    [InlineData(
        "seat-width(outer-diameter: '38.0 mm', inner-diameter: '35.6 mm', seat-angle: '90 deg')",
        "seat-angle: 90 deg was read; it must lie between 0 and 90 deg"
    )]
    [InlineData(
        "seat-width(outer-diameter: '35 mm', inner-diameter: '36 mm', seat-angle: '45 deg')",
        "inner-diameter: 36 mm was read"
    )]
    [InlineData(
        "flatness(x: '0 mm', '1 mm', '2 mm', y: '0 mm', '1 mm', '2 mm', z: '0 mm', '0 mm', '0 mm')",
        "a plane needs points that don't lie in one line"
    )]
    [InlineData(
        "flatness(x: [two.each], y: [two.each], z: [two.each])",
        "x: 0 mm 1 mm was read; give 3 or more values"
    )]
    public void What_a_calculation_cannot_take_is_said_by_name(string text, string why)
    {
        Bench bench = Bench.Empty.With("two.each", List("0 mm", "1 mm"));
        FormulaOutcome.Impossible outcome = Assert.IsType<FormulaOutcome.Impossible>(bench.Outcome(text));
        Assert.Contains(why, outcome.Why, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(
        "seat-width('38.0 mm', '35.6 mm', '45 deg')",
        FormulaFault.Arguments,
        "by name, as in seat-width(outer-diameter: ...)"
    )]
    [InlineData(
        "seat-width(outer-diameter: '38.0 mm')",
        FormulaFault.Arguments,
        "seat-width needs inner-diameter: length"
    )]
    [InlineData(
        "seat-width(outside: '38.0 mm')",
        FormulaFault.Arguments,
        "it takes outer-diameter, inner-diameter, seat-angle"
    )]
    [InlineData("seat-width(seat-angle: '45 deg', seat-angle: '45 deg')", FormulaFault.Arguments, "given twice")]
    [InlineData(
        "seat-width(outer-diameter: '38.0 deg', inner-diameter: '35.6 mm', seat-angle: '45 deg')",
        FormulaFault.Units,
        "is an angle, but outer-diameter of seat-width is a length"
    )]
    [InlineData(
        "seat-width(outer-diameter: 38, inner-diameter: '35.6 mm', seat-angle: '45 deg')",
        FormulaFault.Units,
        "38 has no unit"
    )]
    [InlineData(
        "seat-width(outer-diameter: '38.0 mm', '39 mm', inner-diameter: '35.6 mm', seat-angle: '45 deg')",
        FormulaFault.Arguments,
        "takes one value"
    )]
    [InlineData(
        "seat-width(outer-diameter: [list.each], inner-diameter: '35.6 mm', seat-angle: '45 deg')",
        FormulaFault.Kind,
        "takes one value"
    )]
    [InlineData(
        "seat-width.depth(seat-angle: '45 deg')",
        FormulaFault.UnknownFunction,
        "there is seat-width.width, seat-width.radial-part, seat-width.axial-part"
    )]
    [InlineData("seat-widht(seat-angle: '45 deg')", FormulaFault.UnknownFunction, "near to it: seat-width")]
    [InlineData(
        "iso-tolerance(nominal: '40 mm', grade: 'IT99')",
        FormulaFault.Arguments,
        "grade of iso-tolerance is one of 'IT"
    )]
    [InlineData(
        "texture-unit(value: '20 uin', parameter: 'Ra')",
        FormulaFault.UnknownFunction,
        "left out of formulas: a quantity there carries its unit"
    )]
    [InlineData(
        "sink(removed: '0.1 mm', '45 deg')",
        FormulaFault.Arguments,
        "sink takes its values in order, without names"
    )]
    [InlineData("[list.each] + '1 mm'", FormulaFault.Kind, "is a list (length), which can't be added")]
    [InlineData("[list.each] = [list.each]", FormulaFault.Kind, "only a calculation of the shop takes")]
    [InlineData("max([list.each])", FormulaFault.Kind, "is a list (length), but value of max is a quantity")]
    [InlineData(
        "statistics(readings: '1 mm', '2 N')",
        FormulaFault.Units,
        "they can't be taken together by statistics"
    )]
    [InlineData("statistics(readings: '20 degC', '22 degC')", FormulaFault.Units, "takes amounts that have a unit")]
    [InlineData("2 * x: 3", FormulaFault.Unreadable, "a name with a colon stands before a value of a function")]
    [InlineData("seat-width(outer-diameter: )", FormulaFault.Unreadable, "a value is missing before the parenthesis")]
    [InlineData("spring-rate(load-1: '1 N', height-1: '1 mm'", FormulaFault.Unreadable, "not closed")]
    [InlineData("seat-width + 1", FormulaFault.Unreadable, "")]
    public void What_does_not_fit_is_said_when_the_formula_is_loaded(string text, FormulaFault fault, string message)
    {
        Bench bench = Bench.Empty.With("list.each", List("1 mm", "2 mm"));
        Assert.Contains(
            bench.Problems(text),
            problem => problem.Fault == fault && problem.Message.Contains(message, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_value_not_known_yet_leaves_the_calculation_not_known_yet()
    {
        Bench bench = Bench.Empty.Waiting("later", FormulaType.Quantity(Dimension.OfLength));
        string text = "seat-width(outer-diameter: [later], inner-diameter: '35.6 mm', seat-angle: '45 deg')";
        Assert.Equal(new FormulaOutcome.Missing("later"), bench.Outcome(text));
        bench.Gives("1 mm", $"else({text}, '1 mm')");
        bench.Gives("no", $"known({text})");
    }

    private static FormulaValue.Many List(params string[] quantities) =>
        new([
            .. quantities.Select(text => Exact.Of(Quantity.TryParse(text, out Quantity quantity) ? quantity : default)),
        ]);

    private static (Bench Bench, string Text) FromNames(WorkFunction function, WorkExample example, string result)
    {
        Assert.True(WorkArguments.Read(function.Parameters, example.Arguments).TryGet(out WorkArguments? all, out _));
        Bench bench = Bench.Empty;
        List<string> given = [];
        foreach ((string name, string text) in example.Arguments)
        {
            IReadOnlyList<Exact> amounts = all.Amounts(name);
            string read = amounts.Count > 0 ? $"[{name}]" : $"'{text}'";
            bench =
                amounts.Count == 0 ? bench
                : amounts.Count == 1 ? bench.With(name, new FormulaValue.Amount(amounts[0]))
                : bench.With(name, new FormulaValue.Many(amounts));
            given.Add($"{name}: {read}");
        }

        string call = $"{function.Name}.{result.Replace(' ', '-')}";
        return (bench, $"{call}({string.Join(", ", given)})");
    }

    private static void Same(Bench bench, string text, string expected)
    {
        if (bench.Compiled(text).Type is FormulaType.OfWord)
        {
            // A formula has no unit of its own, so amounts within words are metric.
            string metric = expected switch
            {
                "0.060 in" => "1.5240 mm",
                "0.030 in + 0.015 in" => "0.762 mm + 0.381 mm",
                _ => expected,
            };
            Assert.Equal(new FormulaValue.Word(metric), bench.Value(text));
        }
        else
        {
            bench.Gives(expected, text);
        }
    }
}
