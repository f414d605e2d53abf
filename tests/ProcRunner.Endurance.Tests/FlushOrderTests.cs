using System.Diagnostics;
using System.Globalization;
using ProcRunner.Testing;

namespace ProcRunner.Endurance.Tests;

/// <summary>
/// What the operating system was asked to do, in its order: an acknowledgement is written to the output only after the
/// file it speaks of was flushed. POSIX (IEEE Std 1003.1-2017, fdatasync, fsync): on return the data has been transferred to
/// the medium. fsync(2) of Linux: a new name also needs a flush of its folder.
/// </summary>
public sealed class FlushOrderTests : IDisposable
{
    // Entries with the first line of their acknowledgement. Handing over is written into the shop book as well.
    private static readonly (string Entry, string Answer)[] Session =
    [
        ("as the job says", "  as the job says"),
        ("none given", "  none given"),
        (".009", "  head lost before 0.009 in: recorded"),
        ("hand over to moss", "  handed over to moss"),
        (".005", "  block lost 0.005 in: recorded"),
    ];

    private readonly TempFolder _folder = new();

    private string Store => _folder["store"];

    private string Output => _folder["output"];

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Every_entry_is_flushed_before_it_is_acknowledged()
    {
        IReadOnlyList<SystemCall> calls = Trace();
        string trail = Assert.Single(Directory.GetFiles(Path.Combine(Store, "jobs")));
        string book = Path.Combine(Store, "book.trail");
        for (int i = 0; i < Session.Length; i++)
        {
            // Entry 1 of the trail opens the job.
            string number = (i + 2).ToString(CultureInfo.InvariantCulture);
            SystemCall written = Assert.Single(
                calls,
                c => IsWrite(c, trail) && c.Arguments.Contains($"\\\"n\\\":{number},\\\"of", StringComparison.Ordinal)
            );
            SystemCall flushed = FlushAfter(calls, trail, written);
            SystemCall said = Assert.Single(calls, c => Says(c, Session[i].Answer));

            Assert.True(
                written.Begin < flushed.Begin && flushed.End < said.Begin,
                $"{Session[i]}: {written}, {flushed}, {said}"
            );
        }

        SystemCall anchored = Assert.Single(
            calls,
            c => IsWrite(c, book) && c.Arguments.Contains("handed over", StringComparison.Ordinal)
        );
        SystemCall inTrail = Assert.Single(
            calls,
            c => IsWrite(c, trail) && c.Arguments.Contains("handed over", StringComparison.Ordinal)
        );
        SystemCall anchorFlushed = FlushAfter(calls, book, anchored);
        Assert.True(FlushAfter(calls, trail, inTrail).End < anchored.Begin);
        Assert.True(anchorFlushed.End < Assert.Single(calls, c => Says(c, Session[3].Answer)).Begin);
    }

    [Fact]
    public void A_job_is_opened_by_its_texts_then_its_trail_then_the_shop_book()
    {
        IReadOnlyList<SystemCall> calls = Trace();
        string[] texts = Directory.GetFiles(Path.Combine(Store, "texts"));
        string trail = Assert.Single(Directory.GetFiles(Path.Combine(Store, "jobs")));
        string book = Path.Combine(Store, "book.trail");
        Assert.Equal(2, texts.Length);
        (int Begin, int End)[] put = [.. texts.Select(text => PutWhole(calls, text))];
        (int begin, int end) = PutWhole(calls, trail);
        SystemCall entered = Assert.Single(
            calls,
            c => IsWrite(c, book) && c.Arguments.Contains("job opened", StringComparison.Ordinal)
        );
        SystemCall said = calls.First(c => IsOutput(c));

        Assert.True(put.Max(text => text.End) < begin, "the trail is begun before its texts are on the medium");
        Assert.True(end < entered.Begin, "the shop book speaks of a trail that isn't on the medium");
        Assert.True(
            FlushAfter(calls, book, entered).End < said.Begin,
            "something is said before the job is in the shop book"
        );
    }

    // Temporary file, write, flush, rename, flush of the folder: when it began, and when the name was on the medium.
    private static (int Begin, int End) PutWhole(IReadOnlyList<SystemCall> calls, string path)
    {
        string temporary = path + ".tmp";
        SystemCall written = Assert.Single(calls, c => IsWrite(c, temporary));
        SystemCall flushed = FlushAfter(calls, temporary, written);
        SystemCall renamed = Assert.Single(
            calls,
            c =>
                c.Name.StartsWith("rename", StringComparison.Ordinal)
                && c.Arguments.Contains($"\"{path}\"", StringComparison.Ordinal)
        );
        string folder = Path.GetDirectoryName(path)!;
        SystemCall named = calls.First(c => c.Name == "fsync" && IsOn(c, folder) && c.Begin > renamed.End);
        Assert.Contains(temporary, renamed.Arguments, StringComparison.Ordinal);
        Assert.True(flushed.End < renamed.Begin, $"{path} is renamed before it is flushed");
        return (written.Begin, named.End);
    }

    private static SystemCall FlushAfter(IReadOnlyList<SystemCall> calls, string path, SystemCall written) =>
        calls.First(c => c.Name is "fdatasync" or "fsync" && IsOn(c, path) && c.Begin > written.End);

    private static bool IsWrite(SystemCall call, string path) => call.Name is "write" or "pwrite64" && IsOn(call, path);

    private static bool IsOn(SystemCall call, string path) =>
        call.Arguments.Split(',')[0].EndsWith($"<{path}>", StringComparison.Ordinal);

    private bool IsOutput(SystemCall call) => IsWrite(call, Output);

    private bool Says(SystemCall call, string line) =>
        IsOutput(call) && call.Arguments.Contains($"\"{line}\\n\"", StringComparison.Ordinal);

    private IReadOnlyList<SystemCall> Trace()
    {
        string entries = _folder.Write("entries", string.Concat(Session.Select(s => s.Entry + "\n")));
        string trace = _folder["trace"];
        const string Calls = "trace=write,pwrite64,fsync,fdatasync,rename,renameat,renameat2";
        string command =
            $"exec strace -f -y -s 100000 -e {Calls} -o '{trace}' '{BuiltProgram.Path}' run DEMO --plain --store '{Store}' < '{entries}' > '{Output}'";
        using Process process = Process.Start(
            new ProcessStartInfo("/bin/sh", ["-c", command]) { RedirectStandardError = true, UseShellExecute = false }
        )!;
        string errors = process.StandardError.ReadToEnd();
        process.WaitForExit();
        Assert.True(
            process.ExitCode == 0,
            process.ExitCode == 127
                ? $"This test watches system calls with strace. Install it: apt-get install strace. {errors}"
                : $"status {process.ExitCode.ToString(CultureInfo.InvariantCulture)}: {errors}"
        );
        return SystemCall.ReadAll(trace);
    }
}
