using System.Globalization;
using System.Text;

namespace ProcRunner.Formulas;

/// <summary>Writes the page of the formula language from its tables, so that page and program can't differ.</summary>
public static class FormulaLanguagePage
{
    private const string Opening = """
        # Formula language

        This page is written from the program's own tables; a test holds that it matches them.

        A formula works out a number, a yes or no, or a text from readings and limits:

            [spec.recession.aim] - [recession]
            if([kind] = 'I', '0.052 in', '0.058 in')
            [bore] - [stem] >= '0.0015 in' and [bore] - [stem] <= '0.005 in'

        ## Values

        | written | is |
        | --- | --- |
        | `[spec.recession.aim]` | a name: whatever stands between the brackets, dots and blanks included |
        | `'0.010 in'` `'45 deg'` `'20 degC'` | a quantity: number and unit in quotes |
        | `'replace'` | a text: what is in quotes and is compared with a text, as in `[decided.guide] = 'replace'` |
        | `2` `0.5` | a number without a unit |
        | `yes` `no` | yes, no |
        | `[bore.each]` | a list: the readings at all places of the bore, in the order of the places |
        | `[all.recession.each]` `[kind.recession.each]` | a list: the values at all positions, or at those of this kind, in the order of the positions; not known before each of them is |

        Numbers are kept as exact ratios: `0.052 - 0.023 + 0.1` is 0.129 and `1 / 3 * 3` is 1. An inch is 25.4 mm exactly, so it does
        not matter which of them a value was entered in. Nothing is rounded before the end, except that functions with a root,
        an angle or pi give 12 significant digits.

        Units must balance, and that is proven when the file is loaded, before any reading is there: a length is not added to an
        angle or compared with a bare number (`0.01` has no unit: write `'0.01 in'`). A product or quotient carries its units
        along. Two temperatures are not added; their difference is a temperature difference, in K.

        A name whose value is not known yet leaves the whole formula not known yet, unless `else`, `known`, `if`, `and` or `or`
        keeps it from being looked at. A value that must be taken again counts as not known yet; only conditions still see it.
        Division by zero and the like has no result; the program says why.

        ## Operators

        From the tightest to the loosest; those of one line go from left to right. Parentheses group.

        | operator | meaning |
        | --- | --- |
        | `-` `not` | before a value: sign turned; yes or no turned around (a comparison behind `not` stands in parentheses) |

        """;

    /// <summary>The whole page, in Markdown, ending with a line break.</summary>
    public static string Write()
    {
        StringBuilder page = new(Opening.ReplaceLineEndings("\n"));
        foreach ((string[] signs, string meaning) in FormulaSigns.Between.Reverse())
        {
            string written = string.Join(' ', signs.Select(sign => $"`{sign}`"));
            page.Append(CultureInfo.InvariantCulture, $"| {written} | {meaning} |\n");
        }

        page.Append(
            $"""

            A text of at most {FormulaShape.LongestText} characters, with at most {FormulaShape.MostNested} parentheses open at once. What other languages have and this one leaves
            out is refused with what to write instead: `^` (write `pow(x, 2)`), `==`, `&&`, `%`, bits, dates, joined texts.

            ## Functions

            | function | for |
            | --- | --- |

            """.ReplaceLineEndings("\n")
        );
        foreach (FormulaFunction function in FormulaFunctions.All)
        {
            page.Append(
                CultureInfo.InvariantCulture,
                $"| [`{function.Name}`](#{function.Name}) | {function.Summary} |\n"
            );
        }

        foreach (FormulaFunction function in FormulaFunctions.All)
        {
            Append(page, function);
        }

        FormulaWorkPage.Append(page);
        return page.ToString();
    }

    private static void Append(StringBuilder page, FormulaFunction function)
    {
        page.Append(CultureInfo.InvariantCulture, $"\n### {function.Name}\n\n`{function.Signature}`\n\n");
        page.Append(CultureInfo.InvariantCulture, $"{Sentence(function.Summary)}. {function.Details}\n\n");
        page.Append(CultureInfo.InvariantCulture, $"- works out: {function.Relation}\n");
        page.Append(CultureInfo.InvariantCulture, $"- source: {function.Source}\n");
        foreach (FormulaExample example in function.Examples)
        {
            page.Append(CultureInfo.InvariantCulture, $"- `{example.Formula}` = {example.Result}\n");
        }
    }

    private static string Sentence(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
