namespace ProcRunner.Practice.Rehearsals;

/// <summary>What heads come to when one kind of gauge reads without error.</summary>
/// <param name="Kind">The kind of gauge.</param>
/// <param name="Without">The tally without its error.</param>
public sealed record GaugeEffect(string Kind, Tally Without);
