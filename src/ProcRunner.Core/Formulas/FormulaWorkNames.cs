using System.Collections.Frozen;
using ProcRunner.ShopMath;

namespace ProcRunner.Formulas;

/// <summary>
/// The shop's calculations by the names that formulas call them by: <c>seat-width</c> for the result most asked for,
/// <c>seat-width.axial-part</c> for another.
/// </summary>
internal static class FormulaWorkNames
{
    private static readonly FrozenDictionary<string, (WorkFunction Function, WorkGives Gives)> ByName = WorkFunctions
        .All.Where(function => function.NotInFormulas is null)
        .SelectMany(function =>
            function
                .Gives.Select(gives => (Name: Written(function, gives), Function: function, Gives: gives))
                .Prepend((Name: function.Name, Function: function, Gives: function.Gives[0]))
        )
        .ToFrozenDictionary(one => one.Name, one => (one.Function, one.Gives), StringComparer.Ordinal);

    /// <summary>Every name.</summary>
    public static IEnumerable<string> All => ByName.Keys;

    /// <summary>The calculation and result of a name, capitals counted; null if there is none.</summary>
    public static (WorkFunction Function, WorkGives Gives)? Find(string name) =>
        ByName.TryGetValue(name, out (WorkFunction, WorkGives) found) ? found : null;

    /// <summary>
    /// Whether a word with hyphens or points is meant as one name, and not as a difference: it is a name, or begins with the
    /// first word of one.
    /// </summary>
    public static bool IsLike(string name) =>
        ByName.ContainsKey(name)
        || WorkFunctions.All.Any(function => First(function.Name) == First(name) || function.Name == name);

    /// <summary>What to say to the name of a calculation whose result is misspelt or that no formula can call; else null.</summary>
    public static string? Refusal(string name)
    {
        if (WorkFunctions.Find(name.Split('.')[0]) is not { } function)
        {
            return null;
        }

        string results = string.Join(", ", function.Gives.Select(gives => Written(function, gives)));
        return function.NotInFormulas is { } why
            ? $"{function.Name} is left out of formulas: {why}"
            : $"{function.Name} has no such result: there is {results}";
    }

    /// <summary><c>seat-width.axial-part</c>.</summary>
    public static string Written(WorkFunction function, WorkGives gives) => $"{function.Name}.{gives.Written}";

    private static string First(string name) => name.Split('-', '.')[0];
}
