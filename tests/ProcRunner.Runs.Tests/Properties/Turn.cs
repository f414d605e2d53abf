namespace ProcRunner.Runs.Tests.Properties;

/// <summary>One throw of the dice: what somebody does next, whatever the run waits for.</summary>
/// <param name="What">The kind of command.</param>
/// <param name="Where">Picks the place.</param>
/// <param name="How">Picks the text, the way, the person.</param>
public readonly record struct Turn(byte What, byte Where, byte How);
