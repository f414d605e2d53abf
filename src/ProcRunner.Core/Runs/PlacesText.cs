using System.Globalization;
using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>
/// The values of several places beside each other, bare as long as they are in one unit; each with its unit where they aren't,
/// so that 1.415 mm never stands as 1.415 among inches.
/// </summary>
public static class PlacesText
{
    /// <summary>The values in order, in the unit in which they are expected; each with its own unit where one has another.</summary>
    public static IReadOnlyList<string> Of(IEnumerable<Quantity> values, Unit expected)
    {
        Quantity[] all = [.. values];
        return all.All(v => v.Unit == expected)
            ? [.. all.Select(v => v.Value.ToString(CultureInfo.InvariantCulture))]
            : [.. all.Select(v => v.ToString())];
    }

    /// <summary>The places of a reading in one line; those in the unit of the first place are bare.</summary>
    public static string Of(TakenReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return string.Join(" ", Of(reading.Places.Select(p => p.Value), reading.Value.Unit));
    }
}
