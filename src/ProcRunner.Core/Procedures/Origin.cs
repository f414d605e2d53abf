namespace ProcRunner.Procedures;

/// <summary>Who a limit comes from. Shown wherever the limit is shown.</summary>
public enum Origin
{
    /// <summary>The engine's maker.</summary>
    Maker,

    /// <summary>A published standard.</summary>
    Standard,

    /// <summary>This shop.</summary>
    Shop,

    /// <summary>Common practice that nobody wrote down.</summary>
    RuleOfThumb,
}
