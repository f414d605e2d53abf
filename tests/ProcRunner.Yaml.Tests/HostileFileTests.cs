using System.Diagnostics;
using System.Globalization;
using System.Text;
using ProcRunner.Problems;

namespace ProcRunner.Yaml.Tests;

/// <summary>
/// Files made to harm get a problem, soon and within 200 MB, read as either format. Measured apart, on a quiet machine, each
/// takes under a third of a second; here ten are allowed, because the test machine is shared and what is meant to be caught
/// (a file whose cost grows with its square, or that never ends) takes minutes.
/// </summary>
public sealed class HostileFileTests
{
    private const string Steps = "stages:\n- stage: s\n  steps:\n";
    private const long MostBytes = 200_000_000;

    private static readonly TimeSpan Most = TimeSpan.FromSeconds(4);

    public HostileFileTests()
    {
        // The first load pays for compiling; a hostile file isn't to blame for that.
        Samples.LoadHead(Samples.Head);
        Samples.LoadProcedure(Samples.Procedure);
    }

    public static TheoryData<string, string> Texts { get; } =
        new()
        {
            { "PR-Y04", Explosion() },
            { "PR-Y04", new string('[', 100_000) },
            { "PR-Y04", string.Concat(Enumerable.Repeat("{a: ", 100_000)) },
            { "PR-Y04", string.Concat(Enumerable.Repeat("- ", 100_000)) },
            { "PR-Y04", string.Concat(Enumerable.Repeat("? ", 100_000)) },
            { "PR-Y01", Many(1_000_000, "k@: 1\n") },
            { "PR-Y04", Many(60_000, "k@: 1\n") },
            { "PR-Y04", "[" + string.Concat(Enumerable.Repeat("a,", 60_000)) + "]" },
            { "PR-Y03", "head: a\0b" },
            { "PR-Y03", "head: \"\\ud800\"" },
            { "PR-Y03", "head: \"\\0\"" },
            { "PR-Y03", "head: a\u2028b" },
            { "PR-Y03", "head: a\u202Eb" },
            { "PR-Y03", "" },
            { "PR-Y03", "? [a, b]\n: c" },
            { "PR-Y08", "just a text" },
            { "PR-Y08", "- a\n- list" },
            { "PR-Y06", "a: " + new string('x', 900_000) },
            { "PR-Y06", new string('x', 900) + ": 1" },
            { "PR-Y03", new string('x', 900_000) + ": 1" },
            { "PR-Y03", new string('"', 900_001) },
        };

    [Theory]
    [MemberData(nameof(Texts))]
    public void A_hostile_text_is_refused_quickly_and_in_little_memory(string code, string text)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        Assert.Contains(code, Measured(() => HeadSpecFile.Load("x", bytes).Problems).Select(problem => problem.Code));
        Assert.Contains(code, Measured(() => ProcedureFile.Load("x", bytes).Problems).Select(problem => problem.Code));
    }

    [Fact]
    public void A_hundred_megabytes_are_refused_unread()
    {
        byte[] bytes = new byte[100_000_000];
        Assert.Equal("PR-Y01", Assert.Single(Measured(() => HeadSpecFile.Load("x", bytes).Problems)).Code);
        string path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        try
        {
            File.WriteAllBytes(path, bytes);
            Assert.Equal("PR-Y01", Assert.Single(Measured(() => ProcedureFile.Open(path).Problems)).Code);
        }
        finally
        {
            File.Delete(path);
        }
    }

    // Lone surrogates and overlong forms, as The Unicode Standard, section 3.9, table 3-7 forbids them.
    [Theory]
    [InlineData(new byte[] { 0xED, 0xA0, 0x80 })]
    [InlineData(new byte[] { 0xC0, 0x80 })]
    [InlineData(new byte[] { 0xFF, 0xFE, 0x61, 0x00 })]
    [InlineData(new byte[] { 0xF4, 0x90, 0x80, 0x80 })]
    public void What_is_not_UTF_8_is_refused(byte[] bytes) =>
        Assert.Equal("PR-Y02", Assert.Single(HeadSpecFile.Load("x", bytes).Problems).Code);

    public static TheoryData<string> LargeButLegal { get; } =
    [
        // Each within the limits of size, and quadratic for a careless reader.
        "datums:\n" + Many(9_000, "  d@: {of: head, is: x}\n"),
        Steps + Many(8_000, "  - do: s@\n"),
        Steps + Many(2_000, "  - do: s@\n    ways-on: [a@]\n"),
        Steps + Many(2_500, "  - decide: d@\n    choices: [a, b]\n    only-where: \"[decided.d#] = 'a'\"\n"),
        "readings:\n" + Many(4_000, "  r@: {of: head, measured-in: length, rests-on: [r#]}\n"),
        "readings:\n  a: {of: head, measured-in: length}\n"
            + Steps
            + "  - measure: a\n    works-out:\n"
            + Many(4_000, "      w@: {is: \"[w#]\"}\n")
            + "      w4000: {is: \"[a]\"}\n",
        Steps
            + "  - decide: d\n    choices: [a, b]\n"
            + Many(3_000, "  - do: s@\n    only-where: \"[decided.x@] = 'a'\"\n"),
    ];

    [Theory]
    [MemberData(nameof(LargeButLegal))]
    public void A_large_file_within_the_limits_is_judged_quickly(string text)
    {
        byte[] bytes = Encoding.UTF8.GetBytes("procedure: p\ntitle: t\nrevision: 1\n" + text);
        Assert.NotEmpty(Measured(() => ProcedureFile.Load("x", bytes).Problems));
    }

    // A busy machine can make any one try slow; what is slow by itself is slow every time.
    private static IReadOnlyList<Problem> Measured(Func<IReadOnlyList<Problem>> load)
    {
        const int Tries = 5;
        TimeSpan fastest = TimeSpan.MaxValue;
        IReadOnlyList<Problem> problems = [];
        for (int i = 0; i < Tries && fastest > Most; i++)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            long start = Stopwatch.GetTimestamp();
            problems = load();
            TimeSpan taken = Stopwatch.GetElapsedTime(start);
            fastest = taken < fastest ? taken : fastest;
            Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, MostBytes);
        }

        Assert.InRange(fastest, TimeSpan.Zero, Most);
        return problems;
    }

    // @ stands for the running number, # for the next one.
    private static string Many(int count, string pattern) =>
        string.Concat(
            Enumerable
                .Range(0, count)
                .Select(i =>
                    pattern
                        .Replace("@", i.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal)
                        .Replace("#", (i + 1).ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal)
                )
        );

    // Ten to the tenth entries when every alias is followed.
    private static string Explosion()
    {
        string list = string.Join(", ", Enumerable.Repeat("*a@", 10));
        return "a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n" + Many(9, $"a#: &a# [{list}]\n");
    }
}
