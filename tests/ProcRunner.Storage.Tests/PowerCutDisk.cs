using ProcRunner.Store.Local;

namespace ProcRunner.Tests.Storage;

/// <summary>
/// A disk whose power can be cut. The real folder is what the running system sees; beside it this keeps what the medium has,
/// by the promises of POSIX alone: bytes after a flush of their file, names after a flush of their folder, and of the rest any part.
/// </summary>
internal sealed class PowerCutDisk : IDisk
{
    private readonly Random _random;
    private readonly string _above;
    private readonly Dictionary<string, CachedFile?> _names;
    private readonly Dictionary<string, CachedFile?> _onMedium;
    private readonly List<NameChange> _held = [];
    private readonly Dictionary<FileStream, CachedFile> _open = [];
    private int _left;
    private int _flushesLeft;

    /// <summary>A disk with a folder, as the last power cut left it, and what chooses what the medium keeps.</summary>
    public PowerCutDisk(string root, Random random)
    {
        _random = random;
        _above = Path.GetDirectoryName(root)!;
        _names = Directory.Exists(root)
            ? Directory
                .EnumerateFileSystemEntries(root, "*", SearchOption.AllDirectories)
                .Prepend(root)
                .ToDictionary(p => p, p => File.Exists(p) ? CachedFile.OnMedium(File.ReadAllBytes(p)) : null)
            : [];
        _onMedium = new(_names);
    }

    /// <summary>True once a flush was made to fail.</summary>
    public bool HasFailed { get; private set; }

    /// <summary>Says after how many operations the program is stopped, and which flush fails meanwhile (0 for none).</summary>
    public void StopAfter(int operations, int failingFlush) => (_left, _flushesLeft) = (operations, failingFlush);

    public FileStream Open(string path, FileMode mode)
    {
        Step();
        FileStream file = Disk.Real.Open(path, mode);
        if (!_names.TryGetValue(path, out CachedFile? known) || known is null)
        {
            known = new();
            Change(new(path, known, null));
        }
        else if (mode == FileMode.Create)
        {
            known.Became(0);
        }

        _open[file] = known;
        return file;
    }

    public void Write(FileStream file, long offset, ReadOnlySpan<byte> bytes)
    {
        Step();
        Disk.Real.Write(file, offset, bytes);
        _open[file].Wrote(file, offset, bytes.Length);
    }

    public void Flush(FileStream file)
    {
        Step();
        if (--_flushesLeft == 0)
        {
            HasFailed = true;
            _open[file].FailToFlush(_random);
            throw new IOException("made to fail");
        }

        _open[file].Flush();
    }

    public void Cut(FileStream file, long length)
    {
        Step();
        if (RandomAccess.GetLength(file.SafeFileHandle) != length)
        {
            Disk.Real.Cut(file, length);
            _open[file].Became(length);
        }
    }

    // Only what is held back is kept; here it is called right after a flush, so that nothing is.
    public void Forget(FileStream file, long from)
    {
        byte[] medium = _open[file].Medium;
        RandomAccess.SetLength(file.SafeFileHandle, medium.Length);
        RandomAccess.Write(file.SafeFileHandle, medium, 0);
    }

    public void Rename(string from, string to)
    {
        Step();
        Disk.Real.Rename(from, to);
        Change(new(to, _names[from], from));
    }

    public void Delete(string path)
    {
        Step();
        Disk.Real.Delete(path);
        if (_names.ContainsKey(path))
        {
            Change(new(null, null, path));
        }
    }

    public void MakeFolder(string path)
    {
        Step();
        Disk.Real.MakeFolder(path);
        if (!_names.ContainsKey(path))
        {
            Change(new(path, null, null));
        }
    }

    public void FlushFolder(string path)
    {
        Step();
        foreach (NameChange change in _held.Where(change => change.Folder == path).ToArray())
        {
            change.MakeIn(_onMedium);
            _held.Remove(change);
        }
    }

    /// <summary>The program is killed: its files are closed, and what the system holds back it goes on holding back.</summary>
    public void Kill()
    {
        foreach (FileStream file in _open.Keys)
        {
            file.Dispose();
        }
    }

    /// <summary>Makes the folder what a start finds after the power came back.</summary>
    public void CutPower(string root)
    {
        Kill();
        Dictionary<string, CachedFile?> left = new(_onMedium);
        double share = _random.Next(3) switch
        {
            0 => 0,
            1 => 1,
            _ => _random.NextDouble(),
        };
        foreach (NameChange change in _held.Where(_ => _random.NextDouble() < share))
        {
            change.MakeIn(left);
        }

        if (Directory.Exists(root))
        {
            Directory.Delete(root, recursive: true);
        }

        foreach ((string path, CachedFile? file) in left.OrderBy(pair => pair.Key.Length))
        {
            string folder = Path.GetDirectoryName(path)!;
            bool isReached = folder == _above || (left.ContainsKey(folder) && Directory.Exists(folder));
            if (isReached && file is null)
            {
                Directory.CreateDirectory(path);
            }
            else if (isReached)
            {
                File.WriteAllBytes(path, file!.AfterPowerCut(_random));
            }
        }
    }

    private void Change(NameChange change)
    {
        change.MakeIn(_names);
        _held.Add(change);
    }

    private void Step()
    {
        if (_left-- <= 0)
        {
            throw new PowerCutException();
        }
    }

    /// <summary>A name that came, went, or took another's place; null for no file means a folder.</summary>
    private sealed record NameChange(string? Name, CachedFile? File, string? Gone)
    {
        public string Folder => Path.GetDirectoryName(Name ?? Gone)!;

        public void MakeIn(Dictionary<string, CachedFile?> names)
        {
            if (Gone is not null)
            {
                names.Remove(Gone);
            }

            if (Name is not null)
            {
                names[Name] = File;
            }
        }
    }
}
