using ProcRunner.Quantities;

namespace ProcRunner.Tui.Screens.Maths;

/// <summary>A number that the head in hand has now, to be picked for a calculation.</summary>
/// <param name="Name">What it is, in the procedure's words.</param>
/// <param name="Where">Where it was taken: a position, the head, the step in hand.</param>
/// <param name="Values">One, or those of several places.</param>
internal sealed record KnownNumber(string Name, string Where, IReadOnlyList<Quantity> Values)
{
    private const string Between = "   ";

    /// <summary>What kind of amount it is.</summary>
    public Dimension Dimension => Values[0].Dimension;

    /// <summary>As a line of a list: the amounts, then what they are.</summary>
    public string Line => $"{string.Join(' ', Values)}{Between}{Name}, {Where}";

    /// <summary>The amounts of such a line; anything else as it is.</summary>
    public static string AmountsOf(string line) => line.Split(Between, 2)[0];
}
