using System.Runtime.Versioning;
using ProcRunner.Testing;

namespace ProcRunner.Endurance.Tests;

/// <summary>
/// Every file and folder that the program ever makes in a store, and those that it gives out, are their owner's alone from
/// the first moment, whatever the process's file mode mask. Watched with strace: open(2) with O_CREAT makes a file with the mode
/// given, less the mask.
/// </summary>
public sealed class OwnerOnlyTests : IDisposable
{
    private const UnixFileMode OwnFile = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    private readonly TempFolder _folder = new();

    private string Store => _folder["store"];

    public void Dispose() => _folder.Dispose();

    [Theory]
    [UnsupportedOSPlatform("windows")]
    [InlineData("000")]
    [InlineData("022")]
    [InlineData("777")]
    public void Whatever_the_mask(string mask)
    {
        string entries = _folder.Write("entries", "as the job says\nnone given\nhand over to moss\n");
        List<string> made = Watched(mask, $"run DEMO --plain < '{entries}'");
        string trail = Assert.Single(Directory.GetFiles(Path.Combine(Store, "jobs")));
        File.AppendAllText(trail, "{\"torn");
        made.AddRange(Watched(mask, "run DEMO --plain < /dev/null"));
        made.AddRange(Watched(mask, "jobs"));
        made.AddRange(Watched(mask, "find DEMO"));
        made.AddRange(Watched(mask, $"export DEMO -o '{_folder["store/given out.job"]}'"));

        string[] names = [.. made.Select(path => Path.GetFileName(path)).Distinct()];
        Assert.Contains("index-log.db", names);
        Assert.Contains("book.trail.tmp", names);
        Assert.Contains(names, name => name.Contains(".torn-", StringComparison.Ordinal));
        Assert.Contains(names, name => name.Contains("given out.job", StringComparison.Ordinal));
        foreach (string path in Directory.GetFiles(Store, "*", SearchOption.AllDirectories))
        {
            Assert.Equal((path, OwnFile), (path, File.GetUnixFileMode(path)));
        }

        foreach (string path in Directory.GetDirectories(Store, "*", SearchOption.AllDirectories).Append(Store))
        {
            Assert.Equal((path, OwnFile | UnixFileMode.UserExecute), (path, File.GetUnixFileMode(path)));
        }
    }

    // The paths in the store that a call of the program made; none for anyone but the owner.
    private List<string> Watched(string mask, string words)
    {
        string trace = _folder["trace"];
        string command =
            $"umask {mask}; exec strace -f -s 4096 -e trace=openat,open,creat,mkdir,mkdirat,rename,unlink -o '{trace}' '{BuiltProgram.Path}' --store '{Store}' {words}";
        HashSet<string> there = [.. Existing()];
        (int status, string said) = Program.Run("/bin/sh", "-c", command);
        Assert.True(status == 0, said);
        List<string> made = [];
        foreach (
            SystemCall call in SystemCall
                .ReadAll(trace)
                .Where(c => c.Arguments.Contains(Store, StringComparison.Ordinal))
        )
        {
            // Every other piece between quotation marks is a path.
            string[] paths = [.. call.Arguments.Split('"').Where((_, i) => i % 2 == 1)];
            if (call.Name.StartsWith("rename", StringComparison.Ordinal))
            {
                there.Remove(paths[0]);
                there.Add(paths[1]);
            }
            else if (call.Name == "unlink")
            {
                there.Remove(paths[0]);
            }
            else if (
                call.Name.StartsWith("mkdir", StringComparison.Ordinal)
                || call.Arguments.Contains("O_CREAT", StringComparison.Ordinal)
            )
            {
                if (there.Add(paths[0]))
                {
                    int mode = Convert.ToInt32(call.Arguments.Split(',')[^1].Trim(), 8);
                    Assert.True((mode & 0b111_111) == 0, $"{call}: made for others too");
                    made.Add(paths[0]);
                }
            }
        }

        return made;
    }

    private string[] Existing() =>
        Directory.Exists(Store) ? Directory.GetFileSystemEntries(Store, "*", SearchOption.AllDirectories) : [];
}
