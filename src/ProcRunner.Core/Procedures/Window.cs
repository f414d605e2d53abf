using ProcRunner.Formulas;

namespace ProcRunner.Procedures;

/// <summary>Where the limits of a reading come from.</summary>
public abstract record Window
{
    private Window() { }

    /// <summary>Recorded, not judged.</summary>
    public sealed record None : Window;

    /// <summary>The head spec's limit of this name.</summary>
    /// <param name="LimitName">Name in the head spec.</param>
    public sealed record FromSpec(string LimitName) : Window;

    /// <summary>Worked out; any of the three may be missing.</summary>
    /// <param name="Low">Least value that passes.</param>
    /// <param name="Aim">Value worked to.</param>
    /// <param name="High">Greatest value that passes.</param>
    /// <param name="Origin">Who says so.</param>
    public sealed record Worked(Formula? Low, Formula? Aim, Formula? High, Origin Origin) : Window;
}
