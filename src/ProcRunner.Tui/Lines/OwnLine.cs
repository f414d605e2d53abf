namespace ProcRunner.Tui.Lines;

/// <summary>What came of a line that belongs to what stands around a run, and not to line mode.</summary>
/// <param name="Refused">Why it wasn't taken; empty when it was.</param>
/// <param name="Said">What there is to say of it.</param>
internal sealed record OwnLine(string Refused, IReadOnlyList<string> Said);
