namespace ProcRunner.Runs;

/// <summary>Something that has gone stale, with who should take it again.</summary>
/// <param name="Characteristic">The characteristic's index, or -1 when it is the step's being done.</param>
/// <param name="Step">The step's index, or -1 when it is a characteristic's value.</param>
/// <param name="Position">The position, or <see cref="At.Head"/>.</param>
public readonly record struct StaleItem(int Characteristic, int Step, int Position);
