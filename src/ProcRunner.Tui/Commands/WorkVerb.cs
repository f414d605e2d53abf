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
            return Say.Usage(WorkWords.Unknown(name), HowToList);
        }

        if (words.Length == 0)
        {
            foreach (string line in WorkWords.Description(function))
            {
                Say.Line(line);
            }

            Say.Line($"example: procrunner work {function.Name} {WorkWords.Typed(function.Examples[0])}");
            return Status.Done;
        }

        return WorkWords.Pairs(words) is { } given
            ? Answer(function, given, json)
            : Say.Usage(
                $"{words[0]} is no name=value.",
                $"For example: procrunner work {name} {WorkWords.Typed(function.Examples[0])}"
            );
    }

    private static int Answer(WorkFunction function, IReadOnlyList<KeyValuePair<string, string>> given, bool json)
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

        foreach (string line in WorkWords.Lines(function, answer))
        {
            Say.Line(line);
        }

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
}
