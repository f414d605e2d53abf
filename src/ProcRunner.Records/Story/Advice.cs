namespace ProcRunner.Records.Story;

/// <summary>Something for whoever builds the engine.</summary>
/// <param name="Text">What to do or to know.</param>
/// <param name="From">Who says so: the procedure, the head's spec, common practice.</param>
public sealed record Advice(string Text, string From);
