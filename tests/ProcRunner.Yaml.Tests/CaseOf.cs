namespace ProcRunner.Yaml.Tests;

/// <summary>What is loaded.</summary>
internal enum CaseOf
{
    /// <summary>The head spec.</summary>
    Head,

    /// <summary>The procedure.</summary>
    Procedure,

    /// <summary>Both, joined; the head spec is spoiled.</summary>
    Join,
}
