namespace ProcRunner.Formulas;

/// <summary>From one character of a formula's text up to, and without, another.</summary>
internal readonly record struct FormulaSpan(int Start, int End)
{
    public FormulaSpan To(FormulaSpan other) => new(Math.Min(Start, other.Start), Math.Max(End, other.End));
}
