using ProcRunner.ShopMath;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Lines;

/// <summary>The shop's maths at a prompt of line mode. It looks at no job and changes none.</summary>
internal static class WorkLine
{
    /// <summary>What is printed for a function and its values as typed: the working, what the function asks for, or why not.</summary>
    public static IEnumerable<string> Of(string typed)
    {
        string[] words = typed.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length == 0)
        {
            return WorkFunctions
                .All.GroupBy(one => one.Family)
                .Select(family => $"  {family.Key}: {string.Join(", ", family.Select(one => one.Name))}");
        }

        if (WorkFunctions.Find(words[0]) is not { } function)
        {
            return [$"  {WorkWords.Unknown(words[0])}"];
        }

        if (words.Length == 1)
        {
            string example = $"work {function.Name} {WorkWords.Typed(function.Examples[0])}";
            return [.. WorkWords.Description(function).Select(Indented), $"  example: {example}"];
        }

        if (WorkWords.Pairs(words[1..]) is not { } given)
        {
            return [$"  {words[1]} is no name=value; expected, for example: {WorkWords.Typed(function.Examples[0])}"];
        }

        return function.Answer(given).TryGet(out WorkAnswer? answer, out ShopFault? fault)
            ? WorkWords.Lines(function, answer).Select(Indented)
            : [$"  {fault}"];
    }

    private static string Indented(string line) => $"  {line}";
}
