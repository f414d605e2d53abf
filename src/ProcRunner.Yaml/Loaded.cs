using ProcRunner.Problems;

namespace ProcRunner.Yaml;

/// <summary>What came of reading a file: the value, or everything that is wrong with the file.</summary>
/// <typeparam name="T">Head spec or procedure.</typeparam>
public sealed class Loaded<T>
    where T : class
{
    internal Loaded(T? value, IReadOnlyList<Problem> problems)
    {
        Value = problems.Count == 0 ? value : null;
        Problems = problems;
    }

    /// <summary>What the file says; null when there is any problem.</summary>
    public T? Value { get; }

    /// <summary>All problems, in the order of the file; empty when the file is good.</summary>
    public IReadOnlyList<Problem> Problems { get; }
}
