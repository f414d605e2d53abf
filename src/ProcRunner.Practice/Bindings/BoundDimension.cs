using ProcRunner.Practice.Heads;

namespace ProcRunner.Practice.Bindings;

/// <summary>What a reading is on the practice head.</summary>
/// <param name="Dimension">The dimension.</param>
/// <param name="Places">The head's place for a place of the procedure.</param>
public sealed record BoundDimension(HeadDimension Dimension, IReadOnlyDictionary<string, string> Places)
{
    private static readonly int[] Only = [0];

    /// <summary>The head's places for places of the procedure, by index; -1 for one that the head hasn't.</summary>
    public IReadOnlyList<int> PlacesOf(IReadOnlyList<string> asked) =>
        asked.Count == 0 ? Only : [.. asked.Select(PlaceOf)];

    private int PlaceOf(string place) =>
        Dimension.Places.Count == 1 ? 0 : Dimension.PlaceOf(Places.GetValueOrDefault(place, place));
}
