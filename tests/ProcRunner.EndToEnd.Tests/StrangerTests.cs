using System.Diagnostics;
using System.Text.RegularExpressions;
using ProcRunner.Testing;
using ProcRunner.Tui.Jobs;

namespace ProcRunner.EndToEnd.Tests;

/// <summary>
/// The demo job checked without the program: by the shell that stands in docs/trail-format.md, and by a verifier in another
/// language written from that page. What either says of altered files the program says too.
/// </summary>
public sealed partial class StrangerTests(ReleasedDemo demo) : IClassFixture<ReleasedDemo>
{
    private const int Signatures = 13;
    private const int People = 3;

    [Fact]
    public void The_shell_of_the_page_checks_the_exported_job()
    {
        using TempFolder folder = new();
        string file = Exported(folder);
        string[] script = [.. Page().Split('\n')];
        File.WriteAllLines(folder["check.sh"], script);

        (int status, string said) = Run("sh", folder["check.sh"], file);

        Assert.Equal(10, script.Length);
        Assert.Equal(0, status);
        Assert.Equal(2, said.Trim().Split('\n').Length);
        Assert.EndsWith("Verified OK", said.TrimEnd(), StringComparison.Ordinal);
        string shown = demo.Program.Run("", "verify", file).Output.Replace(" ", "", StringComparison.Ordinal);
        Assert.Contains(said[..64], shown, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"typed\":\"", "changed")]
    [InlineData("\"certificate\":\"", "altered or cut short")]
    [InlineData("\"prev\":\"", "altered or cut short")]
    public void The_shell_of_the_page_finds_a_changed_byte(string after, string said)
    {
        using TempFolder folder = new();
        byte[] bytes = File.ReadAllBytes(Exported(folder));
        int at = bytes.AsSpan().IndexOf(System.Text.Encoding.ASCII.GetBytes(after)) + after.Length;
        bytes[at] ^= 1;
        bool mendTheEnd = said == "changed";
        File.WriteAllBytes(folder["altered.job"], mendTheEnd ? WithRightEnd(bytes) : bytes);
        File.WriteAllText(folder["check.sh"], Page());

        (int status, string output) = Run("sh", folder["check.sh"], folder["altered.job"]);

        Assert.Equal(1, status);
        Assert.StartsWith(said, output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_other_verifier_checks_file_and_store_with_every_signature()
    {
        using TempFolder folder = new();
        (int status, string said) = Verifier(Exported(folder));
        Assert.True(status == 0, said);
        Assert.Contains($", {Signatures + People} signatures, closed out", said, StringComparison.Ordinal);

        (status, said) = Verifier(demo.Store);
        Assert.True(status == 0, said);
        Assert.Contains($"1 jobs, {Signatures + People} signatures", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Both_refuse_every_altered_file_even_with_its_last_line_made_anew()
    {
        using TempFolder folder = new();
        byte[] good = File.ReadAllBytes(Exported(folder));
        Assert.Equal(good, WithRightEnd(good));
        Assert.True(JobFile.Check(good) is { Check.Holds: true });
        Random random = new(20261125);
        List<(string How, byte[] Bytes)> altered = [.. Alterations(good, random)];

        foreach ((string how, byte[] bytes) in altered)
        {
            string path = folder["altered.job"];
            File.WriteAllBytes(path, bytes);
            bool ours = JobFile.Check(bytes) is { Check.Holds: true };
            (int theirs, string said) = Verifier(path);
            Assert.False(ours, how);
            Assert.True(theirs == 1, $"{how}: {theirs} {said}");
        }

        Assert.InRange(altered.Count, 25, 60);
    }

    // A forger who knows the format makes the digests and the last line anew; without a PIN, no signature.
    private static IEnumerable<(string How, byte[] Bytes)> Alterations(byte[] good, Random random)
    {
        for (int i = 0; i < 12; i++)
        {
            int at = random.Next(good.Length - 100);
            byte[] changed = [.. good];
            changed[at] ^= (byte)(1 << random.Next(7));
            yield return ($"byte {at} changed", WithRightEnd(changed));
            yield return ($"byte {at} removed", WithRightEnd([.. good[..at], .. good[(at + 1)..]]));
        }

        string[] lines = System.Text.Encoding.UTF8.GetString(good).TrimEnd('\n').Split('\n');
        foreach (int line in (int[])[1, 3, 4, 6, 7, 12, lines.Length - 3, lines.Length - 2])
        {
            yield return ($"line {line} removed", Joined(lines.Where((_, i) => i != line)));
        }

        int trail = Array.FindIndex(lines, l => l.Contains("\"opens\":", StringComparison.Ordinal));
        (lines[trail + 5], lines[trail + 6]) = (lines[trail + 6], lines[trail + 5]);
        yield return ("two entries changed places", Joined(lines));
        (lines[trail + 5], lines[trail + 6]) = (lines[trail + 6], lines[trail + 5]);
        string[] rechained = [.. Rechained(lines, trail, "\"customer\":\"Lower", "\"customer\":\"Upper")];
        yield return ("the customer changed and the chain made anew", Joined(rechained));
        rechained = [.. Rechained(lines, trail, "\"name\":\"R. Vale (demo)\"", "\"name\":\"R. Wale (demo)\"")];
        yield return ("a signer's name changed and the chain made anew", Joined(rechained));
    }

    private static IEnumerable<string> Rechained(string[] lines, int trail, string from, string to)
    {
        string previous = new('0', 64);
        for (int i = 0; i < lines.Length; i++)
        {
            if (i < trail || i == lines.Length - 1)
            {
                yield return lines[i];
                continue;
            }

            string json = lines[i].Split('\t')[0];
            json = json.Replace(from, to, StringComparison.Ordinal);
            json = PreviousDigest().Replace(json, $"\"prev\":\"{previous}\"");
            previous = Sha256(System.Text.Encoding.UTF8.GetBytes(json));
            yield return $"{json}\t{previous}";
        }
    }

    private static byte[] Joined(IEnumerable<string> lines) =>
        WithRightEnd(System.Text.Encoding.UTF8.GetBytes(string.Join('\n', lines) + "\n"));

    private static byte[] WithRightEnd(byte[] file)
    {
        int end = file.AsSpan(0, file.Length - 1).LastIndexOf((byte)'\n') + 1;
        string digest = Sha256(file[..end]);
        return [.. file[..end], .. System.Text.Encoding.ASCII.GetBytes($"{{\"end\":\"{digest}\"}}\n")];
    }

    private static string Sha256(byte[] bytes) =>
        Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes));

    private static string Page()
    {
        string page = File.ReadAllText(RepoRoot.PathOf("docs/trail-format.md"));
        return page.Split("```sh\n")[1].Split("\n```")[0];
    }

    private string Exported(TempFolder folder)
    {
        string file = folder["demo.job"];
        BuiltProgram.Ended export = demo.Program.Run("", "export", "DEMO", "-o", file);
        Assert.True(export.Status == 0, export.ToString());
        return file;
    }

    private static (int Status, string Said) Verifier(string path) =>
        Run("python3", RepoRoot.PathOf("tests/verifier/verify.py"), path);

    private static (int Status, string Said) Run(string program, params string[] arguments)
    {
        ProcessStartInfo start = new(program, arguments)
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, said + errors.Result);
    }

    [GeneratedRegex("\"prev\":\"[0-9a-f]{64}\"", RegexOptions.None, 1000)]
    private static partial Regex PreviousDigest();
}
