using ProcRunner.Quantities;

namespace ProcRunner.Practice.Heads;

/// <summary>Something that is true of a practice head and can be measured.</summary>
public sealed class HeadDimension
{
    internal HeadDimension(
        string name,
        bool ofHead,
        Dimension kind,
        IReadOnlyList<string> places,
        Func<PracticeHead, int, int, double>? worked,
        Func<PracticeHead, int, int, double, double>? seen = null
    ) => (Name, OfHead, Kind, Places, Worked, Seen) = (name, ofHead, kind, places, worked, seen);

    /// <summary>Name, as practice files use it.</summary>
    public string Name { get; }

    /// <summary>True for one of the head, false for one at each position.</summary>
    public bool OfHead { get; }

    /// <summary>The kind of quantity.</summary>
    public Dimension Kind { get; }

    /// <summary>Its places; one without a name for a single value.</summary>
    public IReadOnlyList<string> Places { get; }

    /// <summary>True when a practice file gives it; false when it follows from others.</summary>
    public bool IsGiven => Worked is null;

    /// <summary>How it follows from others, in base units: head, position, place; null when it is given.</summary>
    internal Func<PracticeHead, int, int, double>? Worked { get; }

    /// <summary>
    /// What a faultless gauge would be shown where that isn't the truth: dirt under the valve, a bent pilot; null: the truth. Head,
    /// position, place, and by how much the gauge's own pilot is bent.
    /// </summary>
    internal Func<PracticeHead, int, int, double, double>? Seen { get; }

    /// <summary>True when it is measured with the valve on its seat, so that dirt there shows.</summary>
    internal bool IsOnSeat => Name is "recession" or "stem height" or "seat vacuum" or "final vacuum";

    /// <summary>True when it is cut in the casting and grows with the casting's heat.</summary>
    internal bool IsOfCasting =>
        Name is "deck thickness" or "guide hole" or "guide bore" or "counterbore bore" or "counterbore depth";

    /// <summary>Where a given one is kept.</summary>
    internal int Offset { get; set; }

    /// <summary>The index of a place by its name; -1 when there is none.</summary>
    public int PlaceOf(string place)
    {
        for (int i = 0; i < Places.Count; i++)
        {
            if (string.Equals(Places[i], place, StringComparison.Ordinal))
            {
                return i;
            }
        }

        return -1;
    }
}
