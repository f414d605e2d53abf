using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using ProcRunner.Trail;

namespace ProcRunner.Benchmarks;

/// <summary>A trail of 100,000 entries checked from end to end, against sha256sum over the same file, by turns.</summary>
internal static class VerifyBenchmark
{
    private const double Goal = 5;
    private const int Entries = 100_000;
    private const int Turns = 9;

    public static Result Run(DemoRun demo, string folder)
    {
        string path = Path.Combine(folder, "long.trail");
        Write(demo, path);
        Verify(path);
        List<double> ours = [];
        List<double> theirs = [];
        List<double> hashedHere = [];
        for (int turn = 0; turn < Turns; turn++)
        {
            theirs.Add(Timing.Of(() => Sha256Sum(path)));
            ours.Add(Timing.Of(() => Verify(path)));
            hashedHere.Add(Timing.Of(() => HashHere(path)));
        }

        double ratio = Timing.Quantile(ours, 0.5) / Timing.Quantile(theirs, 0.5);
        return new(
            $"a trail of {Entries.ToString("N0", CultureInfo.InvariantCulture)} entries verified, to sha256sum over the same file",
            "within 5 times",
            string.Create(
                CultureInfo.InvariantCulture,
                $"ratio of medians {ratio:0.00}; {new FileInfo(path).Length / 1e6:0} MB; {Turns} each; verified {Timing.Quantile(ours, 0.5):0} ms, sha256sum {Timing.Quantile(theirs, 0.5):0} ms, the platform's SHA-256 in this process {Timing.Quantile(hashedHere, 0.5):0} ms"
            ),
            ratio <= Goal
        );
    }

    // The demo job's entries over and over, chained anew, in the manner of a job that never ends.
    private static void Write(DemoRun demo, string path)
    {
        using FileStream file = File.Create(path);
        Digest previous = Digest.Zero;
        for (int i = 0; i < Entries; i++)
        {
            bool isFirst = i == 0;
            TrailEntry like = isFirst ? demo.Entries[0] : demo.Entries[1 + (i % (demo.Entries.Length - 2))];
            byte[] line = TrailLine.Encode(like with { Sequence = i + 1, Previous = previous });
            file.Write(line);
            previous = TrailLine.DigestOf(line);
        }
    }

    private static void Verify(string path)
    {
        using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 0);
        if (TrailCheck.Verify(file) is not TrailVerdict.Holds { Entries: Entries })
        {
            throw new InvalidOperationException("The long trail doesn't hold.");
        }
    }

    private static void HashHere(string path)
    {
        using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 0);
        SHA256.HashData(file);
    }

    private static void Sha256Sum(string path)
    {
        using Process process = Process.Start(
            new ProcessStartInfo("sha256sum", [path]) { UseShellExecute = false, RedirectStandardOutput = true }
        )!;
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
    }
}
