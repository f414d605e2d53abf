namespace ProcRunner.Runs;

/// <summary>A figure of two heads of one engine, side by side.</summary>
/// <param name="Of">What it is.</param>
/// <param name="Here">On this head; empty when it isn't known.</param>
/// <param name="There">On the other head; empty when it isn't known.</param>
/// <param name="Difference">How far they are apart; empty when that can't be said.</param>
/// <param name="Differs">True when they are further apart than the procedure allows, or are other things.</param>
public sealed record HeadFigure(string Of, string Here, string There, string Difference, bool Differs)
{
    /// <summary>True when it is known on both heads.</summary>
    public bool IsKnown => Here.Length > 0 && There.Length > 0;
}
