namespace ProcRunner.Formulas;

/// <summary>One thing wrong with a formula.</summary>
/// <param name="Fault">What kind of mistake.</param>
/// <param name="Message">What is wrong and what to write instead, as a sentence without its full stop.</param>
/// <param name="Part">The part of the text that it is about, as written, cut with an ellipsis after 60 characters.</param>
/// <param name="Position">Where the part starts: characters before it, from 0.</param>
/// <param name="Length">Characters the whole part takes; 0 at the end of the text.</param>
public sealed record FormulaProblem(FormulaFault Fault, string Message, string Part, int Position, int Length)
{
    private const int LongestPart = 60;

    internal static FormulaProblem At(string text, FormulaSpan span, FormulaFault fault, string message) =>
        new(fault, message, Quote(text, span), span.Start, span.End - span.Start);

    internal static string Quote(string text, FormulaSpan span) =>
        span.End - span.Start <= LongestPart
            ? text[span.Start..span.End]
            : string.Concat(text.AsSpan(span.Start, LongestPart - 1), "\u2026");
}
