namespace ProcRunner.People;

/// <summary>A lead about to certify someone else's key.</summary>
/// <param name="Lead">The lead.</param>
/// <param name="Pin">The lead's PIN.</param>
public sealed record Certifier(Person Lead, string Pin);
