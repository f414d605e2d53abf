using System.Collections.Frozen;

namespace ProcRunner.Formulas;

/// <summary>The table of functions.</summary>
public static class FormulaFunctions
{
    /// <summary>Every function, in the order the page of the language shows them.</summary>
    public static IReadOnlyList<FormulaFunction> All { get; } =
    [
        .. ChoiceFunctions.Table,
        .. NumberFunctions.Table,
        .. AngleFunctions.Table,
        .. SeatFunctions.Table,
        .. FitFunctions.Table,
        .. PressFitFunctions.Table,
        .. SpringFunctions.Table,
        .. SpeedFunctions.Table,
        .. TestFunctions.Table,
    ];

    private static readonly FrozenDictionary<string, FormulaFunction> ByName = All.ToFrozenDictionary(
        function => function.Name,
        StringComparer.Ordinal
    );

    /// <summary>The function of a name, capitals counted; null if there is none.</summary>
    public static FormulaFunction? Find(string name) => ByName.GetValueOrDefault(name);
}
