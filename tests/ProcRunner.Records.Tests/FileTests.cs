using ProcRunner.Testing;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Records.Tests;

public class FileTests
{
    public static TheoryData<string> Endings => [.. RecordFile.Forms.Select(f => f.Ending)];

    [Theory]
    [MemberData(nameof(Endings))]
    public void A_record_is_its_owners_alone_and_nothing_lies_beside_it(string ending)
    {
        using TempFolder folder = new();
        string path = folder["record" + ending];

        OwnFile.Replace(path, file => RecordFile.Write(Worked.Demo.Record, path, file, WritingProgress.None));

        Assert.Equal([path], Directory.GetFiles(folder.Path));
        Assert.InRange(
            new FileInfo(path).Length,
            Worked.Demo.Written(ending).Length - 64,
            Worked.Demo.Written(ending).Length + 64
        );
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(path));
        }
    }

    [Theory]
    [MemberData(nameof(Endings))]
    public void Writing_that_is_stopped_leaves_what_was_there(string ending)
    {
        using TempFolder folder = new();
        string path = folder.Write("record" + ending, "the one before");
        using CancellationTokenSource stop = new();
        WritingProgress progress = new((_, _) => stop.Cancel(), stop.Token);

        Assert.Throws<OperationCanceledException>(() =>
            OwnFile.Replace(
                path,
                file =>
                {
                    RecordFile.Write(Worked.Demo.Record, path, file, progress);
                    progress.Report(1, 1);
                }
            )
        );

        Assert.Equal([path], Directory.GetFiles(folder.Path));
        Assert.Equal("the one before", File.ReadAllText(path));
    }

    [Fact]
    public void Writing_that_fails_leaves_what_was_there()
    {
        using TempFolder folder = new();
        string path = folder.Write("record.html", "the one before");

        Assert.Throws<IOException>(() =>
            OwnFile.Replace(
                path,
                file =>
                {
                    file.Write([1, 2, 3]);
                    throw new IOException("No space left on device");
                }
            )
        );

        Assert.Equal([path], Directory.GetFiles(folder.Path));
        Assert.Equal("the one before", File.ReadAllText(path));
    }

    [Fact]
    public void Progress_is_told_piece_by_piece()
    {
        List<(int Done, int Of)> told = [];
        using MemoryStream to = new();

        RecordFile.Write(
            Worked.Demo.Record,
            "x.pdf",
            to,
            new WritingProgress((done, of) => told.Add((done, of)), CancellationToken.None)
        );

        Assert.True(told.Count > 50);
        Assert.Equal(Enumerable.Range(1, told.Count), told.Select(t => t.Done));
        Assert.Equal(told[^1].Of, told[^1].Done);
    }
}
