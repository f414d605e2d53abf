using ProcRunner.Formulas;
using ProcRunner.ShopMath;

namespace ProcRunner.Tui.Shell;

/// <summary>How a calculation of the shop is typed: its name, then name=value with units, in any order.</summary>
internal static class WorkWords
{
    /// <summary>
    /// Names and values of words; null when the first isn't name=value. A word without = goes on from the value before it, so
    /// that values need no quotes: <c>depth=0.10 mm, x=0 100 200 mm</c>.
    /// </summary>
    public static IReadOnlyList<KeyValuePair<string, string>>? Pairs(IReadOnlyList<string> words)
    {
        List<KeyValuePair<string, string>> given = [];
        foreach (string word in words)
        {
            string[] pair = word.Split('=', 2);
            if (pair.Length == 2)
            {
                given.Add(KeyValuePair.Create(pair[0].Trim(), pair[1].Trim()));
            }
            else if (given.Count > 0)
            {
                given[^1] = KeyValuePair.Create(given[^1].Key, $"{given[^1].Value} {word}".Trim());
            }
            else
            {
                return null;
            }
        }

        return given;
    }

    /// <summary>The working of an answer, line by line, with the source.</summary>
    public static IEnumerable<string> Lines(WorkFunction function, WorkAnswer answer) =>
        answer.Steps.SelectMany(step => step.Lines).Append($"source: {function.Source}");

    /// <summary>What a function is and asks for, line by line.</summary>
    public static IEnumerable<string> Description(WorkFunction function)
    {
        yield return $"{function.Name}: {function.Summary}";
        yield return function.Details;
        int width = function.Parameters.Max(one => one.Name.Length);
        foreach (WorkParameter parameter in function.Parameters)
        {
            string optional = parameter.IsOptional ? "optional, " : "";
            yield return $"  {parameter.Name.PadRight(width)}  {optional}{parameter.Takes}: {parameter.Summary}";
        }

        yield return $"source: {function.Source}";
    }

    /// <summary>Says that there is no function of a name, with those that are near.</summary>
    public static string Unknown(string name)
    {
        string[] parts = name.Split('-', StringSplitOptions.RemoveEmptyEntries);
        string[] near =
        [
            .. WorkFunctions.All.Select(one => one.Name).Where(one => one.Split('-').Intersect(parts).Any()).Take(6),
            .. NearNames.Of(name, WorkFunctions.All.Select(one => one.Name)),
        ];
        near = [.. near.Distinct()];
        return $"There is no function {name}.{(near.Length > 0 ? $" There is {string.Join(", ", near)}." : "")}";
    }

    /// <summary>An example's values as they are typed.</summary>
    public static string Typed(WorkExample example) => example.Given.Replace(";", "", StringComparison.Ordinal);
}
