using ProcRunner.Quantities;

namespace ProcRunner.Practice.Rehearsals;

/// <summary>What heads come to with another approach allowance and a gauge that errs more or less.</summary>
/// <param name="Setting">The setting that holds the allowance.</param>
/// <param name="Allowance">The allowance.</param>
/// <param name="Gauge">The kind of gauge that ends the cut.</param>
/// <param name="Times">How many times its error.</param>
/// <param name="Tally">What came of it.</param>
public sealed record ApproachEffect(string Setting, Quantity Allowance, string Gauge, double Times, Tally Tally);
