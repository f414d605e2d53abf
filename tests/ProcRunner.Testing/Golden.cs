using System.Globalization;
using System.Runtime.CompilerServices;
using Snapshooter;
using Snapshooter.Xunit;
using Xunit.Sdk;

namespace ProcRunner.Testing;

/// <summary>
/// Compares a text that a test made with a committed one. The only place that knows which snapshot library does it.
/// </summary>
/// <remarks>
/// With <c>PROCRUNNER_UPDATE_GOLDEN=1</c> the committed text is written instead, to be looked at in the diff and committed;
/// under <c>CI=true</c> never. A text that was never committed fails.
/// </remarks>
public static class Golden
{
    /// <summary>The environment variable that has committed texts written.</summary>
    public const string UpdateVariable = "PROCRUNNER_UPDATE_GOLDEN";

    private static bool Updates =>
        Environment.GetEnvironmentVariable(UpdateVariable) == "1"
        && !string.Equals(Environment.GetEnvironmentVariable("CI"), "true", StringComparison.OrdinalIgnoreCase);

    /// <summary>Compares with <c>__snapshots__/NAME</c> beside the test's source.</summary>
    /// <param name="text">What the test made.</param>
    /// <param name="name">A file name, unique in the folder, with an ending that says what it is.</param>
    /// <param name="testSource">Left out: the compiler gives it.</param>
    public static void Match(string text, string name, [CallerFilePath] string testSource = "")
    {
        string folder = Path.GetDirectoryName(testSource)!;
        string path = Path.Combine(folder, "__snapshots__", name);
        if (Prepare(path, text))
        {
            Snapshot.Match(WithLineFeeds(text), new SnapshotFullName(name, folder));
        }
    }

    /// <summary>Compares with a committed file, for a page of docs/ that is written by the program.</summary>
    /// <param name="text">The page as it should be.</param>
    /// <param name="repoRelativePath">From the repository's folder, with forward slashes: <c>docs/page.md</c>.</param>
    public static void MatchFile(string text, string repoRelativePath)
    {
        string path = RepoRoot.PathOf(repoRelativePath);
        if (Prepare(path, text) && Difference(File.ReadAllText(path), WithLineFeeds(text)) is { } difference)
        {
            throw new XunitException($"{repoRelativePath} isn't what the program says{difference}\n{HowToUpdate}");
        }
    }

    /// <summary>Where two texts first differ, in words; null when they don't.</summary>
    private static string? Difference(string committed, string made)
    {
        if (committed == made)
        {
            return null;
        }

        string[] old = committed.Split('\n');
        string[] now = made.Split('\n');
        int line = 0;
        while (line < old.Length && line < now.Length && old[line] == now[line])
        {
            line++;
        }

        string number = (line + 1).ToString(CultureInfo.InvariantCulture);
        return $", first in line {number}:\n- {LineOf(old, line)}\n+ {LineOf(now, line)}";
    }

    private static string HowToUpdate =>
        $"If the new text is right, run this test with {UpdateVariable}=1 and commit what it writes.";

    /// <summary>True when there is something to compare with; writes it first where that is wanted.</summary>
    private static bool Prepare(string path, string text)
    {
        if (Updates)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, WithLineFeeds(text));
            return false;
        }

        if (!File.Exists(path))
        {
            throw new XunitException($"{path} is missing.\n{HowToUpdate}");
        }

        return true;
    }

    private static string LineOf(string[] lines, int index) => index < lines.Length ? lines[index] : "(the end)";

    private static string WithLineFeeds(string text) => text.ReplaceLineEndings("\n");
}
