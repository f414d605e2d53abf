using ProcRunner.Problems;

namespace ProcRunner.Lessons;

/// <summary>What a reading of the procedure is on the practice head.</summary>
/// <param name="Reading">The characteristic, worked-out ones too.</param>
/// <param name="Of">The head's dimension.</param>
/// <param name="Places">The head's place for a place of the procedure, where they are called differently.</param>
/// <param name="Source">Where it stands in the file.</param>
public sealed record BoundReading(string Reading, string Of, IReadOnlyDictionary<string, string> Places, Place Source);
