using System.Text;
using ProcRunner.Problems;
using ProcRunner.Procedures;
using ProcRunner.Procedures.Checks;

namespace ProcRunner.Yaml.Tests;

/// <summary>One spoiled text or more for every code: it is raised, alone, at its line and column.</summary>
public sealed class ProblemCodeTests
{
    // Codes that no spoiled text raises, each with a test of its own below or in HostileFileTests.
    private static readonly string[] Elsewhere = ["PR-Y02", "PR-Y12"];

    public static TheoryData<int> Cases { get; } = [.. Enumerable.Range(0, ProblemCase.All.Count)];

    [Fact]
    public void The_samples_have_no_problems()
    {
        Loaded<HeadSpec> head = Samples.LoadHead(Samples.Head);
        Loaded<Procedure> procedure = Samples.LoadProcedure(Samples.Procedure);
        Assert.Empty(head.Problems);
        Assert.Empty(procedure.Problems);
        Assert.Empty(PlanCheck.Join(procedure.Value!, head.Value!, "head.yaml"));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_spoiled_file_raises_its_code_at_its_place(int index)
    {
        ProblemCase one = ProblemCase.All[index];
        string sample = one.Of == CaseOf.Procedure ? Samples.Procedure : Samples.Head;
        string file = one.Of == CaseOf.Procedure ? "procedure.yaml" : "head.yaml";
        int at = sample.IndexOf(one.Old, StringComparison.Ordinal);
        Assert.True(at >= 0, one.Old);
        string text = string.Concat(sample.AsSpan(0, at), one.New, sample.AsSpan(at + one.Old.Length));

        IReadOnlyList<Problem> problems = Load(one.Of, text);

        Problem problem = Assert.Single(problems);
        Place expected = one.At is null ? new Place(file, 0, 0) : Samples.PlaceOf(file, text, one.At);
        Assert.Equal((one.Code, expected), (problem.Code, problem.Place));
        Assert.InRange(problem.Text.Length, 20, 400);
    }

    [Fact]
    public void Bytes_that_are_not_UTF_8_are_refused_at_their_line()
    {
        byte[] text = [.. Encoding.UTF8.GetBytes("head: x\ntitle: "), 0xE9, (byte)'\n'];
        Problem problem = Assert.Single(HeadSpecFile.Load("head.yaml", text).Problems);
        Assert.Equal(("PR-Y02", new Place("head.yaml", 2, 1)), (problem.Code, problem.Place));
    }

    [Fact]
    public void A_file_that_is_not_there_is_a_problem_like_others()
    {
        string path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        Assert.Equal("PR-Y12", Assert.Single(HeadSpecFile.Open(path).Problems).Code);
        Assert.Equal("PR-Y12", Assert.Single(ProcedureFile.Open(path).Problems).Code);
    }

    [Fact]
    public void Every_code_is_raised_by_a_test_and_every_raised_code_is_in_the_table()
    {
        string[] raised =
        [
            .. ProblemCase.All.Select(one => one.Code).Concat(Elsewhere).Distinct().Order(StringComparer.Ordinal),
        ];
        Assert.Equal([.. ProblemCodes.All.Select(one => one.Code).Order(StringComparer.Ordinal)], raised);
    }

    [Fact]
    public void All_problems_are_reported_in_one_go()
    {
        string text = Samples
            .Head.Replace("origin: maker, worn", "worn", StringComparison.Ordinal)
            .Replace("low: 0.049", "low: 0.079", StringComparison.Ordinal)
            .Replace("material", "materail", StringComparison.Ordinal)
            .Replace("low: 0.6265", "low: 0.6245", StringComparison.Ordinal);
        IEnumerable<string> codes = Samples.LoadHead(text).Problems.Select(problem => problem.Code);
        Assert.Equal(["PR-Y07", "PR-Y06", "PR-H01", "PR-H02", "PR-H05"], codes);
    }

    private static IReadOnlyList<Problem> Load(CaseOf of, string text)
    {
        if (of == CaseOf.Procedure)
        {
            return Samples.LoadProcedure(text).Problems;
        }

        Loaded<HeadSpec> head = Samples.LoadHead(text);
        return of == CaseOf.Head || head.Value is null
            ? head.Problems
            : PlanCheck.Join(Samples.LoadProcedure(Samples.Procedure).Value!, head.Value, "head.yaml");
    }
}
