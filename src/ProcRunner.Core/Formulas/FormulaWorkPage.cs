using System.Globalization;
using System.Text;
using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Formulas;

/// <summary>Writes the part of the language's page about the shop's calculations, from their tables.</summary>
internal static class FormulaWorkPage
{
    private const string Opening = """

        ## Calculations of the shop

        Every calculation of [shop maths](shop-maths.md) can be called from a formula as well. Its values are given by the names
        that the page lists, in any order, and an optional one may be left out. What takes several values takes them one by one,
        as a list, or both:

            seat-width(outer-diameter: [seat outside], inner-diameter: [seat inside], seat-angle: '45 deg')
            flatness(x: '0 mm', '100 mm', '0 mm', '100 mm', y: '0 mm', '0 mm', '80 mm', '80 mm', z: [deck.each])
            individuals-chart.upper-limit(readings: [all.recession.each])

        A calculation with several results gives the first of them; another is written behind a point,
        `seat-width.axial-part(...)`. Results that are words compare with texts; amounts within them are metric. A word, as a class of fit or a material, stands
        in the formula. Units are proven when the file is loaded, as everywhere; a value that the calculation can't take, an angle
        of 90 deg for a seat, leaves the formula without a result, and the program says which value it is and what is allowed.


        """;

    /// <summary>The part, from its heading on.</summary>
    public static void Append(StringBuilder page)
    {
        page.Append(Opening.ReplaceLineEndings("\n"));
        foreach (WorkFunction function in WorkFunctions.All.Where(one => one.NotInFormulas is not null))
        {
            page.Append(CultureInfo.InvariantCulture, $"Left out: `{function.Name}`: {function.NotInFormulas}.\n");
        }

        foreach (IGrouping<string, WorkFunction> family in Called().GroupBy(one => one.Family))
        {
            string heading = char.ToUpperInvariant(family.Key[0]) + family.Key[1..];
            page.Append(CultureInfo.InvariantCulture, $"\n### {heading}\n");
            foreach (WorkFunction function in family)
            {
                Append(page, function);
            }
        }
    }

    /// <summary>An example as a formula that asks for one of its results; null if the values can't be read.</summary>
    public static string? Written(WorkFunction function, WorkExample example, string result)
    {
        if (
            function.Gives.FirstOrDefault(one => one.Name == result) is not { } gives
            || !WorkArguments.Read(function.Parameters, example.Arguments).TryGet(out WorkArguments? all, out _)
        )
        {
            return null;
        }

        IEnumerable<string> given = example.Arguments.Select(one =>
            all.Quantities(one.Key) is { Count: > 0 } amounts
                ? $"{one.Key}: {string.Join(", ", amounts.Select(Written))}"
                : $"{one.Key}: '{one.Value}'"
        );
        string name = gives == function.Gives[0] ? function.Name : FormulaWorkNames.Written(function, gives);
        return $"{name}({string.Join(", ", given)})";
    }

    private static IEnumerable<WorkFunction> Called() => WorkFunctions.All.Where(one => one.NotInFormulas is null);

    private static string Written(Quantity quantity) =>
        quantity.Unit == Units.One && quantity.Value >= 0 ? quantity.ToString() : $"'{quantity}'";

    private static void Append(StringBuilder page, WorkFunction function)
    {
        page.Append(CultureInfo.InvariantCulture, $"\n**`{function.Name}`**: {function.Summary}\n\n");
        IEnumerable<string> takes = function.Parameters.Select(one =>
            $"{(one.IsOptional ? "optional " : "")}`{one.Name}:` {one.Takes}"
        );
        page.Append(CultureInfo.InvariantCulture, $"- takes {string.Join("; ", takes)}\n");
        IEnumerable<string> gives = function.Gives.Select(one => $"`.{one.Written}` {one}");
        page.Append(CultureInfo.InvariantCulture, $"- gives {string.Join("; ", gives)}\n");
        foreach (WorkExample example in function.Examples)
        {
            (string name, string result) = example.Results[0];
            if (Written(function, example, name) is { Length: <= FormulaShape.LongestText } formula)
            {
                page.Append(CultureInfo.InvariantCulture, $"- `{formula}` = {result}\n");
                return;
            }
        }

        page.Append("- its examples have more values than fit a formula one by one: give them as lists\n");
    }
}
