using System.Diagnostics;

namespace ProcRunner.Endurance.Tests;

/// <summary>A real file system of its own, small enough to be filled; gone when disposed.</summary>
internal sealed class SmallDisk : IDisposable
{
    private readonly string[] _mount;

    private SmallDisk(string path, params string[] mount)
    {
        Path = path;
        _mount = [.. mount, path];
    }

    /// <summary>Where it is mounted.</summary>
    public string Path { get; }

    /// <summary>A tmpfs; null where this account may not mount.</summary>
    public static SmallDisk? OfMemory(string path) =>
        new SmallDisk(path, "-t", "tmpfs", "-o", "size=2m", "tmpfs").Mounted();

    /// <summary>An ext4 in a file, which the kernel makes read-only at the first error; null where that can't be had.</summary>
    public static SmallDisk? OfFile(string path, string image)
    {
        using (FileStream file = new(image, FileMode.CreateNew))
        {
            file.SetLength(16 << 20);
        }

        return Run("mkfs.ext4", "-q", image)
            ? new SmallDisk(path, "-o", "loop,errors=remount-ro", image).Mounted()
            : null;
    }

    /// <summary>Takes all the room that is left.</summary>
    public void Fill()
    {
        try
        {
            using FileStream file = new(Filler, FileMode.Append, FileAccess.Write, FileShare.None, bufferSize: 0);
            while (true)
            {
                file.Write(new byte[4096]);
            }
        }
        catch (IOException)
        {
            // That is what it is for.
        }
    }

    /// <summary>Gives the room back.</summary>
    public void Free() => File.Delete(Filler);

    /// <summary>An error that the kernel notes, as of a failing disk; false where the kernel offers no such thing.</summary>
    public bool Fail()
    {
        string device = File.ReadLines("/proc/mounts").Select(l => l.Split(' ')).Last(m => m[1] == Path)[0];
        string trigger = $"/sys/fs/ext4/{System.IO.Path.GetFileName(device)}/trigger_fs_error";
        if (!File.Exists(trigger))
        {
            return false;
        }

        File.WriteAllText(trigger, "made to fail");
        return true;
    }

    /// <summary>Taken out and put in again.</summary>
    public void Remount(params string[] options)
    {
        Run("umount", Path);
        Run("mount", [.. options, .. _mount]);
    }

    /// <summary>Makes it read-only, while nothing is open on it for writing.</summary>
    public bool MakeReadOnly() => Run("mount", "-o", "remount,ro", Path);

    /// <inheritdoc/>
    public void Dispose() => Run("umount", Path);

    private SmallDisk? Mounted()
    {
        Directory.CreateDirectory(Path);
        return Run("mount", _mount) ? this : null;
    }

    private string Filler => System.IO.Path.Combine(Path, "filler");

    private static bool Run(string program, params string[] words)
    {
        try
        {
            using Process run = Process.Start(
                new ProcessStartInfo(program, words)
                {
                    UseShellExecute = false,
                    RedirectStandardError = true,
                    RedirectStandardOutput = true,
                }
            )!;
            run.WaitForExit();
            return run.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }
}
