using ProcRunner.Procedures;
using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>A value that a formula may read, place by place.</summary>
/// <param name="Value">The value that counts.</param>
/// <param name="Places">Place by place; empty for a worked-out value.</param>
internal readonly record struct KnownValue(Quantity Value, IReadOnlyList<PlaceValue> Places)
{
    /// <summary>The values at the places, in the order they were asked for; the value itself when it has none.</summary>
    public IEnumerable<Quantity> Each => Places.Count > 0 ? Places.Select(place => place.Value) : [Value];

    /// <summary>A statistic over the places; over the value itself when it has none.</summary>
    public Exact Of(Statistic statistic)
    {
        Exact[] all = new Exact[Math.Max(1, Places.Count)];
        all[0] = Exact.Of(Value);
        for (int i = 0; i < Places.Count; i++)
        {
            all[i] = Exact.Of(Places[i].Value);
        }

        return Statistics.Of(statistic, all);
    }

    /// <summary>The value at one place, or null when it wasn't taken there.</summary>
    public Quantity? At(string place)
    {
        foreach (PlaceValue one in Places)
        {
            if (one.Place == place)
            {
                return one.Value;
            }
        }

        return null;
    }
}
