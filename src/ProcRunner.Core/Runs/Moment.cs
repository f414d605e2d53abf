namespace ProcRunner.Runs;

/// <summary>When and by whom a command is given.</summary>
/// <param name="Now">The time, with the shop's offset.</param>
/// <param name="Person">Id of the person at the machine.</param>
/// <param name="LastDigest">Digest of the last entry of the job's trail, lower hex; what a release covers.</param>
public readonly record struct Moment(DateTimeOffset Now, string Person, string LastDigest);
