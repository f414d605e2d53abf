using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>Makes of a job's entries what is searched for; null leaves the job out.</summary>
public delegate IndexedJob? IndexProjection(string jobId, IEnumerable<TrailEntry> entries);
