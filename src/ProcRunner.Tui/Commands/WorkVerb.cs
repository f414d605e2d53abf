using System.CommandLine;
using ProcRunner.ShopMath;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary><c>work FUNCTION name=value ...</c>: the shop's calculator.</summary>
internal static class WorkVerb
{
    private const string HowToList = "procrunner work lists the functions.";

    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Argument<string?> function = new("function")
        {
            Description = "what to work out; none: a list of them",
            Arity = ArgumentArity.ZeroOrOne,
        };
        Argument<string[]> values = new("values")
        {
            Description = "name=value with its unit, as in depth=0.10 mm; none: what the function asks for",
            Arity = ArgumentArity.ZeroOrMore,
        };
        Option<bool> json = JsonOption.Create();
        Command verb = new("work", "work out one of the shop's calculations, with its steps")
        {
            function,
            values,
            json,
        };
        verb.SetAction(parsed => Run(parsed.GetValue(function), parsed.GetValue(values) ?? [], parsed.GetValue(json)));
        return verb;
    }

    private static int Run(string? name, string[] words, bool json)
    {
        if (name is null)
        {
            List(json);
            return Status.Done;
        }

        if (WorkFunctions.Find(name) is not { } function)
        {
            return Say.Usage($"There is no function {name}.{Near(name)}", HowToList);
        }

        if (words.Length == 0)
        {
            Describe(function);
            return Status.Done;
        }

        return TryPair(words, out List<KeyValuePair<string, string>> given)
            ? Answer(function, given, json)
            : Say.Usage(
                $"{words[0]} is no name=value.",
                $"For example: procrunner work {name} {Typed(function.Examples[0])}"
            );
    }

    private static int Answer(WorkFunction function, List<KeyValuePair<string, string>> given, bool json)
    {
        if (!function.Answer(given).TryGet(out WorkAnswer? answer, out ShopFault? fault))
        {
            if (json)
            {
                Say.Json(WorkJson.Of(function, fault));
                return Status.Usage;
            }

            return Say.Usage(fault.ToString(), $"procrunner work {function.Name} says what it asks for.");
        }

        if (json)
        {
            Say.Json(WorkJson.Of(function, answer));
            return Status.Done;
        }

        foreach (string line in answer.Steps.SelectMany(step => step.Lines))
        {
            Say.Line(line);
        }

        Say.Line($"source: {function.Source}");
        return Status.Done;
    }

    private static void List(bool json)
    {
        if (json)
        {
            Say.Json(WorkJson.OfAll());
            return;
        }

        int width = WorkFunctions.All.Max(one => one.Name.Length);
        foreach (IGrouping<string, WorkFunction> family in WorkFunctions.All.GroupBy(one => one.Family))
        {
            Say.Line(family.Key);
            foreach (WorkFunction function in family)
            {
                Say.Line($"  {function.Name.PadRight(width)}  {function.Summary}");
            }
        }
    }

    private static void Describe(WorkFunction function)
    {
        Say.Line($"{function.Name}: {function.Summary}");
        Say.Line(function.Details);
        int width = function.Parameters.Max(one => one.Name.Length);
        foreach (WorkParameter parameter in function.Parameters)
        {
            string optional = parameter.IsOptional ? "optional, " : "";
            Say.Line($"  {parameter.Name.PadRight(width)}  {optional}{parameter.Takes}: {parameter.Summary}");
        }

        Say.Line($"source: {function.Source}");
        Say.Line($"example: procrunner work {function.Name} {Typed(function.Examples[0])}");
    }

    // A word without = goes on from the value before it, so that values need no quotes: depth=0.10 mm, x=0 100 200 mm.
    private static bool TryPair(string[] words, out List<KeyValuePair<string, string>> given)
    {
        given = [];
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
                return false;
            }
        }

        return true;
    }

    private static string Near(string name)
    {
        string[] parts = name.Split('-', StringSplitOptions.RemoveEmptyEntries);
        string[] near =
        [
            .. WorkFunctions.All.Select(one => one.Name).Where(one => one.Split('-').Intersect(parts).Any()).Take(6),
        ];
        return near.Length > 0 ? $" There is {string.Join(", ", near)}." : "";
    }

    private static string Typed(WorkExample example) => example.Given.Replace(";", "", StringComparison.Ordinal);
}
