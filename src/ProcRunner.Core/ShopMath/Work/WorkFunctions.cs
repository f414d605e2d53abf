using System.Collections.Frozen;

namespace ProcRunner.ShopMath;

/// <summary>The table of the shop's calculations.</summary>
public static class WorkFunctions
{
    /// <summary>Every calculation, family by family, in the order a list shows them.</summary>
    public static IReadOnlyList<WorkFunction> All { get; } =
    [
        .. FitWork.Table,
        .. StandardFitWork.Table,
        .. PressFitWork.Table,
        .. ThermalFitWork.Table,
        .. BoreWork.Table,
        .. ReadoutWork.Table,
        .. SeatWork.Table,
        .. HeightWork.Table,
        .. SpringWork.Table,
        .. WireSpringWork.Table,
        .. DeckWork.Table,
        .. ChamberWork.Table,
        .. PistonClearanceWork.Table,
        .. CuttingWork.Table,
        .. LeakWork.Table,
        .. MeasurementWork.Table,
        .. SpcWork.Table,
    ];

    private static readonly FrozenDictionary<string, WorkFunction> ByName = All.ToFrozenDictionary(
        function => function.Name,
        StringComparer.Ordinal
    );

    /// <summary>The calculation of a name; null if there is none.</summary>
    public static WorkFunction? Find(string name) => ByName.GetValueOrDefault(name);
}
