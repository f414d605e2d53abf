using System.Globalization;
using System.Text;

namespace ProcRunner.ShopMath;

/// <summary>Writes the page of the shop's calculations from their tables, so that page and program can't differ.</summary>
public static class ShopMathsPage
{
    private const string Opening = """
        # Shop maths

        This page is written from the program's own tables; a test holds that it matches them, and every example is worked out by
        a test.

        Each function is worked out on the command line with its steps:

            procrunner work seat-width outer-diameter=38.0 mm inner-diameter=35.6 mm seat-angle=45 deg

        On the screen they are behind `/`, shop maths, with the numbers of the step in hand filled in; in line mode `work` does the
        same; a procedure's formula calls them by name ([formula language](formula-language.md)).

        Inch and metric units may be mixed; results are in inches where the first length is. A value without a unit, or with the
        unit of something else, is refused by name. Several values stand behind each other, with one unit for all that have none:
        `x=0 100 200 mm`. `procrunner work` alone lists the functions, `procrunner work FUNCTION` says what one asks for, `--json`
        is for scripts.

        A maker's limit overrides every rule of thumb. Results are no better than the readings they come from.

        """;

    /// <summary>The whole page, in Markdown, ending with a line break.</summary>
    public static string Write()
    {
        StringBuilder page = new(Opening.ReplaceLineEndings("\n"));
        foreach (IGrouping<string, WorkFunction> family in WorkFunctions.All.GroupBy(one => one.Family))
        {
            page.Append(
                CultureInfo.InvariantCulture,
                $"\n## {Sentence(family.Key)}\n\n| function | for |\n| --- | --- |\n"
            );
            foreach (WorkFunction function in family)
            {
                page.Append(
                    CultureInfo.InvariantCulture,
                    $"| [`{function.Name}`](#{function.Name}) | {function.Summary} |\n"
                );
            }

            foreach (WorkFunction function in family)
            {
                Append(page, function);
            }
        }

        return page.ToString();
    }

    private static void Append(StringBuilder page, WorkFunction function)
    {
        page.Append(
            CultureInfo.InvariantCulture,
            $"\n### {function.Name}\n\n{Sentence(function.Summary)}. {function.Details}\n\n"
        );
        page.Append("| value | takes | is |\n| --- | --- | --- |\n");
        foreach (WorkParameter parameter in function.Parameters)
        {
            string optional = parameter.IsOptional ? "optional: " : "";
            page.Append(
                CultureInfo.InvariantCulture,
                $"| `{parameter.Name}` | {parameter.Takes} | {optional}{parameter.Summary} |\n"
            );
        }

        page.Append(CultureInfo.InvariantCulture, $"\nSource: {function.Source}.\n\n");
        WorkExample worked = function.Examples[0];
        page.Append(
            CultureInfo.InvariantCulture,
            $"    $ procrunner work {function.Name} {worked.Given.Replace(";", "", StringComparison.Ordinal)}\n"
        );
        if (function.Answer(worked.Arguments).TryGet(out WorkAnswer? answer, out _))
        {
            foreach (string line in answer.Steps.SelectMany(step => step.Lines))
            {
                page.Append(CultureInfo.InvariantCulture, $"    {line}\n");
            }
        }

        page.Append('\n');
        foreach (WorkExample example in function.Examples)
        {
            page.Append(CultureInfo.InvariantCulture, $"- `{example.Given}`: {example.Gives} ({example.Source})\n");
        }
    }

    private static string Sentence(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
