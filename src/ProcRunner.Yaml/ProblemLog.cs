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

    /// <summary>Takes a problem; the 200th ends the reading.</summary>
    /// <exception cref="TooManyProblemsException">This was the last that is taken.</exception>
    public void Add(string code, Place place, string text) => Add(new Problem(code, place, text));

    /// <summary>Takes each as <see cref="Add(string, Place, string)"/> does.</summary>
    public void AddAll(IEnumerable<Problem> problems)
    {
        foreach (Problem problem in problems)
        {
            Add(problem);
        }
    }

    /// <summary>The problems in the order of the file.</summary>
    public IReadOnlyList<Problem> InOrder() =>
        [
            .. _problems
                .OrderBy(problem => problem.Place.Line)
                .ThenBy(problem => problem.Place.Column)
                .ThenBy(problem => problem.Code, StringComparer.Ordinal),
        ];

    private void Add(Problem problem)
    {
        if (_problems.Add(problem) && _problems.Count >= Most)
        {
            throw new TooManyProblemsException();
        }
    }
}
