using ProcRunner.Formulas;

namespace ProcRunner.Procedures;

/// <summary>A value worked out from readings when one is taken, with limits of its own.</summary>
/// <param name="Name">The characteristic it gives.</param>
/// <param name="Formula">How.</param>
/// <param name="Window">What it is judged against.</param>
/// <param name="Selects">The table in which the formula's value selects what counts; null: the formula's value counts.</param>
public sealed record WorkOut(string Name, Formula Formula, Window Window, SelectionTable? Selects = null);
