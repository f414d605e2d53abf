using ProcRunner.Quantities;
using ProcRunner.Runs;

namespace ProcRunner.Tui.Training;

/// <summary>A reading that was typed otherwise than the gauge's face showed it.</summary>
/// <param name="At">The step and position.</param>
/// <param name="Place">The place's name; empty for a single reading.</param>
/// <param name="Typed">What was typed.</param>
/// <param name="Shown">What the face showed.</param>
internal sealed record Misread(At At, string Place, Quantity Typed, Quantity Shown);
