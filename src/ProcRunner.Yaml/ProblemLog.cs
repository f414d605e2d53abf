using ProcRunner.Problems;

namespace ProcRunner.Yaml;

/// <summary>Collects the problems of one file.</summary>
/// <param name="file">The file's name as it was given.</param>
internal sealed class ProblemLog(string file)
{
    // A file that is wrong everywhere would otherwise bury its first mistake.
    private const int Most = 200;

    private readonly HashSet<Problem> _problems = [];

    public string File { get; } = file;

    public int Count => _problems.Count;

    public void Add(string code, Place place, string text) => _problems.Add(new Problem(code, place, text));

    public void AddAll(IEnumerable<Problem> problems) => _problems.UnionWith(problems);

    /// <summary>The problems in the order of the file, at most 200.</summary>
    public IReadOnlyList<Problem> InOrder() =>
        [
            .. _problems
                .OrderBy(problem => problem.Place.Line)
                .ThenBy(problem => problem.Place.Column)
                .ThenBy(problem => problem.Code, StringComparer.Ordinal)
                .Take(Most),
        ];
}
