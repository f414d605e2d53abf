namespace ProcRunner.Practice.Operators;

/// <summary>How a practice head ended.</summary>
public enum HeadEnd
{
    /// <summary>Released.</summary>
    Released,

    /// <summary>Given up as the procedure allows.</summary>
    Scrapped,

    /// <summary>The operator found no way on: a refusal that nothing answers, or too many entries.</summary>
    Stuck,
}
