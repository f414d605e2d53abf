using ProcRunner.Practice.Operators;

namespace ProcRunner.Practice.Rehearsals;

/// <summary>A value that was released and is truly out of its limits.</summary>
/// <param name="Head">Number of the head.</param>
/// <param name="Value">What it is.</param>
/// <param name="Conforms">By its reading and the gauge's uncertainty, how likely it was within limits (JCGM 106:2012, 7.4), of 1.</param>
public sealed record Escape(long Head, Held Value, double Conforms);
