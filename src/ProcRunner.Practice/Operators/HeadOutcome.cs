using ProcRunner.Runs;

namespace ProcRunner.Practice.Operators;

/// <summary>What became of one practice head.</summary>
/// <param name="End">How it ended.</param>
/// <param name="Why">Where and why it was given up or stuck; empty otherwise.</param>
/// <param name="Entries">How many commands were accepted.</param>
/// <param name="Refusals">Results out of spec: where and by what, in order.</param>
/// <param name="Cuts">Every cut that came to its end, with how deep it truly came.</param>
/// <param name="Concessions">Results that were conceded: where.</param>
/// <param name="Readings">How its readings' verdicts stood to the truth, by index of the characteristic.</param>
/// <param name="Values">Every value that counts at a release, place by place; empty otherwise.</param>
public sealed record HeadOutcome(
    HeadEnd End,
    string Why,
    int Entries,
    IReadOnlyList<(At At, string Way)> Refusals,
    IReadOnlyList<CutEnd> Cuts,
    IReadOnlyList<At> Concessions,
    IReadOnlyList<ReadingCount> Readings,
    IReadOnlyList<Held> Values
)
{
    /// <summary>Released without a single result out of spec.</summary>
    public bool FirstTime => End == HeadEnd.Released && Refusals.Count == 0;
}
