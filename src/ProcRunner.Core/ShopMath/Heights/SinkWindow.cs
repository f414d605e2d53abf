using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>How far a valve must and may sink so that its recession lies in a window after a deck cut.</summary>
/// <param name="RecessionAfterCut">Without any sink.</param>
/// <param name="Least">Sink needed, 0 or more.</param>
/// <param name="Most">Sink allowed; below 0 the valve is too deep already.</param>
public sealed record SinkWindow(Exact RecessionAfterCut, Exact Least, Exact Most)
{
    /// <summary>Whether the recession is in the window without any sink.</summary>
    public bool HoldsNow => Least.Value.IsZero && Most.Value.Sign >= 0;

    /// <summary>
    /// Least = (low - recession + cut) / cos(guide angle), not below 0; most = (high - recession + cut) / cos(guide angle): plane
    /// geometry. A low limit above the high one is a fault.
    /// </summary>
    /// <param name="recession">Before the cut, square to the deck.</param>
    /// <param name="deckCut">Square to the deck.</param>
    /// <param name="low">Least recession allowed after the cut, itself allowed.</param>
    /// <param name="high">Most recession allowed after the cut, itself allowed.</param>
    /// <param name="guideCosine">Of <see cref="Heights.GuideCosine"/>, above 0.</param>
    public static ShopResult<SinkWindow> Of(Exact recession, Exact deckCut, Exact low, Exact high, Rational guideCosine)
    {
        if (Allowed.NotAbove("low", low, "high limit", high) is { } fault)
        {
            return fault;
        }

        Exact after = recession - deckCut;
        Exact least = Heights.SinkFor(low, after, Zero, guideCosine);
        return new SinkWindow(
            after,
            least.Value.Sign > 0 ? least : Zero,
            Heights.SinkFor(high, after, Zero, guideCosine)
        );
    }

    private static Exact Zero => new(Rational.Zero, Dimension.OfLength);
}
