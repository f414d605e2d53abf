using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>What a store takes from the outside.</summary>
internal sealed record StoreSettings(TimeProvider Time, EntropySource Entropy, string Bench);
