namespace ProcRunner.Records.Story;

/// <summary>A result out of spec, from the first reading to how it was settled.</summary>
/// <param name="Stage">The stage.</param>
/// <param name="Step">The step's name in it.</param>
/// <param name="Position">The position's name, or "head".</param>
/// <param name="Lines">What happened, in order.</param>
/// <param name="Fault">What was wrong with the last result out of spec.</param>
/// <param name="End">How it ended.</param>
/// <param name="Outcome">The same in words.</param>
/// <param name="IsCurrent">False for a concession whose result was taken again since, so that another one counts now.</param>
/// <param name="PermittedBy">Who signed the concession; empty for none.</param>
/// <param name="OnlyMeasuredAgain">True when it was settled by measuring again and by no work.</param>
public sealed record Case(
    string Stage,
    string Step,
    string Position,
    IReadOnlyList<CaseLine> Lines,
    string Fault,
    CaseEnd End,
    string Outcome,
    bool IsCurrent,
    string PermittedBy = "",
    bool OnlyMeasuredAgain = false
)
{
    /// <summary>What it is about: <c>3E: recession (seat cut)</c>.</summary>
    public string About => $"{Position}: {Step} ({Stage})";
}
