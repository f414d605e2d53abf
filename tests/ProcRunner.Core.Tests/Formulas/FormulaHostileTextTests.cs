using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ProcRunner.Formulas;
using ProcRunner.Quantities;

namespace ProcRunner.Core.Tests.Formulas;

/// <summary>No text, however long or odd, does more than be refused.</summary>
public class FormulaHostileTextTests
{
    private static readonly string[] Scraps =
    [
        "(",
        ")",
        ",",
        "+",
        "-",
        "*",
        "/",
        "=",
        "<>",
        "<",
        "<=",
        ">",
        ">=",
        " ",
        "\t",
        "\n",
        "and",
        "or",
        "not",
        "yes",
        "no",
        "if(",
        "else(",
        "known(",
        "min(",
        "pow(",
        "sqrt(",
        "sink(",
        "frob(",
        "1",
        "0",
        "0.5",
        ".",
        "1e9",
        "99999999999999999999999999999",
        "'0.010 in'",
        "'45 deg'",
        "'20 degC'",
        "'x'",
        "'",
        "[depth]",
        "[kind]",
        "[nobody]",
        "[",
        "]",
        "^",
        "**",
        "?",
        ":",
        "!",
        "%",
        "#",
        "\"",
        "\\",
        "{",
        "}",
        ";",
        "in",
        "like",
        "\u2212",
        "\u0000",
        "\uD800",
        "\U0001F600",
        "e\u0301",
        "\u202E",
    ];

    private static readonly Bench Names = Bench
        .Empty.With("depth", "0.052 in")
        .With("kind", new FormulaValue.Word("I"))
        .Waiting("later", FormulaType.Quantity(Dimension.OfLength));

    [Property(MaxTest = 2000)]
    public void Any_text_is_compiled_or_refused(string? text) => Survives(text ?? "");

    [Property(MaxTest = 3000)]
    public Property Any_soup_of_tokens_is_compiled_or_refused() =>
        Prop.ForAll(
            Arb.From(Gen.Elements(Scraps).ListOf().Select(scraps => string.Concat(scraps))),
            text => Survives(text)
        );

    [Theory]
    [InlineData('-')]
    [InlineData('(')]
    [InlineData(')')]
    [InlineData('[')]
    [InlineData('\'')]
    [InlineData('!')]
    [InlineData('1')]
    [InlineData('.')]
    [InlineData(' ')]
    [InlineData('a')]
    [InlineData('\uD800')]
    public void A_hundred_thousand_of_one_character_are_refused(char one) =>
        Assert.Equal(FormulaFault.TooLarge, Assert.Single(Names.Problems(new string(one, 100_000))).Fault);

    [Theory]
    [InlineData("(")]
    [InlineData("-")]
    [InlineData("not ")]
    [InlineData("abs(")]
    [InlineData("(-")]
    [InlineData("-(")]
    [InlineData("if(yes,1,")]
    [InlineData("min(1,")]
    [InlineData("1+(")]
    [InlineData("[")]
    public void Deep_nesting_needs_no_deep_stack(string opening)
    {
        int closings = opening.Contains('(', StringComparison.Ordinal) ? 1 : 0;
        foreach (int depth in (int[])[16, 31, 32, 33, 60, 120, 500])
        {
            string text = string.Concat(Enumerable.Repeat(opening, depth)) + "1" + new string(')', depth * closings);
            OnSmallStack(() => Survives(text[..Math.Min(text.Length, 500)]));
        }
    }

    [Fact]
    public void The_longest_chain_needs_no_deep_stack() =>
        OnSmallStack(() => Bench.Empty.GivesExactly("250", "1" + string.Concat(Enumerable.Repeat("+1", 249))));

    private static void Survives(string text)
    {
        switch (FormulaCompiler.Compile(text, Names, null))
        {
            case FormulaResult.Compiled compiled:
                Assert.NotNull(compiled.Formula.Evaluate(Names));
                Assert.NotNull(compiled.Formula.Working(Names, Units.Inch, 4));
                break;
            case FormulaResult.Refused refused:
                Assert.NotEmpty(refused.Problems);
                Assert.All(refused.Problems, problem => Assert.InRange(problem.Position, 0, text.Length));
                Assert.All(
                    refused.Problems,
                    problem => Assert.InRange(problem.Position + problem.Length, 0, text.Length)
                );
                Assert.DoesNotContain(
                    refused.Problems,
                    problem => problem.Message.Contains("can't be read as a formula", StringComparison.Ordinal)
                );
                break;
            default:
                Assert.Fail("neither compiled nor refused");
                break;
        }
    }

    // The stack of a small worker thread: an overflow would end the whole test run.
    private static void OnSmallStack(Action work)
    {
        Exception? caught = null;
        Thread thread = new(
            () =>
            {
                try
                {
                    work();
                }
                catch (Exception error)
                {
                    caught = error;
                }
            },
            maxStackSize: 1024 * 1024
        );
        thread.Start();
        thread.Join();
        Assert.Null(caught);
    }
}
