using ProcRunner.Formulas;
using ProcRunner.Quantities;

namespace ProcRunner.Procedures;

/// <summary>A number worked out and shown with a step: a spindle speed, the shim to put in, what a decision rests on.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Formula">How.</param>
/// <param name="ShownIn">The unit it is shown in; null: the formula's base, or the head's unit of length.</param>
/// <param name="Digits">Decimals shown.</param>
public sealed record ShownNumber(string Name, Formula Formula, Unit? ShownIn, int Digits);
