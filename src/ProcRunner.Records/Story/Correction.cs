namespace ProcRunner.Records.Story;

/// <summary>An entry that was corrected. Both stay.</summary>
/// <param name="Step">The step and position.</param>
/// <param name="Was">What stood before.</param>
/// <param name="WasBy">Who entered that.</param>
/// <param name="Now">What stands since.</param>
/// <param name="Reason">Why.</param>
/// <param name="By">Who corrected it.</param>
public sealed record Correction(string Step, string Was, Stamped? WasBy, string Now, string Reason, Stamped By);
