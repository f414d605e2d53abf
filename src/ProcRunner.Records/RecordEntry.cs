using ProcRunner.Runs;
using ProcRunner.Trail;

namespace ProcRunner.Records;

/// <summary>An entry of a job's trail with what it says.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="Digest">Its digest.</param>
/// <param name="Events">Its events, read.</param>
public sealed record RecordEntry(TrailEntry Entry, Digest Digest, IReadOnlyList<RunEvent> Events);
