namespace ProcRunner.Core.Tests.Runs;

/// <summary>An event as it may stand in a trail, with what it means.</summary>
/// <param name="Event">The event.</param>
/// <param name="Meaning">One or two sentences for the catalogue.</param>
internal sealed record EventExample<T>(T Event, string Meaning);
