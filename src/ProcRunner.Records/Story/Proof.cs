using ProcRunner.Trail;

namespace ProcRunner.Records.Story;

/// <summary>What ties the paper to the trail.</summary>
/// <param name="Code">The proof code; null while the job isn't closed out.</param>
/// <param name="LastEntry">The last entry's number.</param>
/// <param name="LastDigest">Its digest.</param>
/// <param name="RootName">The name of the shop's first lead, whose key certifies the others; empty when there is none.</param>
/// <param name="RootFingerprint">The fingerprint of that key; empty when there is none.</param>
public sealed record Proof(ProofCode? Code, long LastEntry, Digest LastDigest, string RootName, string RootFingerprint);
