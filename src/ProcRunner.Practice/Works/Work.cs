namespace ProcRunner.Practice.Works;

/// <summary>A kind of work on a practice head.</summary>
/// <param name="Name">As practice files use it.</param>
/// <param name="NeedsAim">True when it works to a number.</param>
/// <param name="Cuts">What a pass of the spindle does: bench, position, how deep the tool came; null when it isn't cut in passes.</param>
/// <param name="Touches">The surface that the tool touches for its zero, along the spindle; null when it sets no zero.</param>
/// <param name="BeginsAnew">What it means that the step is to be done over from its beginning; null: nothing.</param>
/// <param name="Do">What it does: bench, position (-1: the head), aim in base units or 0.</param>
internal sealed record Work(
    string Name,
    bool NeedsAim,
    Action<Bench, int, double>? Do,
    Func<Bench, int, double>? Touches = null,
    Action<Bench, int, double>? Cuts = null,
    Action<Bench>? BeginsAnew = null
);
