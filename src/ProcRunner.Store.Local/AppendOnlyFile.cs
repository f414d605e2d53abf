using System.Text;
using Microsoft.Win32.SafeHandles;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>
/// A trail's file, which grows by whole lines. What is acknowledged is on the medium; what a failure left behind it is cut
/// off before anything else is written.
/// </summary>
/// <remarks>
/// After a failed write or flush the file is opened afresh by its name, cut to the acknowledged length, flushed, read again from
/// the medium, checked up to its acknowledged end, and only then written again: the system may have dropped the pages that
/// it couldn't write, so that repeating the flush alone would report a false success. A file that isn't the one that was
/// acknowledged (exchanged, cut, written to by another program, gone with its folder) is never written to.
/// </remarks>
/// <param name="disk">The disk.</param>
/// <param name="path">The file.</param>
/// <param name="of">Whose trail it is.</param>
/// <param name="length">The bytes that are acknowledged.</param>
/// <param name="last">The digest at their end.</param>
internal sealed class AppendOnlyFile(IDisk disk, string path, string of, long length, Digest last) : IDisposable
{
    private FileStream? _file;
    private Digest _last = last;
    private int _attempted;
    private bool _hasLeftovers;

    /// <summary>The bytes that are acknowledged.</summary>
    public long Length { get; private set; } = length;

    /// <summary>Puts a line on the medium, not yet acknowledged.</summary>
    /// <returns>Null, or what went wrong; then the file is at its acknowledged length or will be put there first.</returns>
    public string? TryWrite(ReadOnlySpan<byte> line)
    {
        if (Undo() is { } left)
        {
            return left;
        }

        for (int attempt = 1; ; attempt++)
        {
            try
            {
                FileStream file = attempt == 1 ? Opened() : Restored();
                if (Fault(file, Length) is { } fault)
                {
                    return fault;
                }

                (_hasLeftovers, _attempted) = (true, line.Length);
                disk.Write(file, Length, line);
                disk.Flush(file);
                CheckName(line);
                return null;
            }
            catch (Exception e) when (DiskTrouble.Is(e))
            {
                if (attempt == 2)
                {
                    Undo();
                    return DiskTrouble.InWords(e);
                }
            }
        }
    }

    /// <summary>The line that was written last is acknowledged from now on.</summary>
    public void Acknowledge(ReadOnlySpan<byte> line)
    {
        Length += line.Length;
        _last = TrailLine.DigestOf(line);
        _hasLeftovers = false;
    }

    /// <summary>Cuts off what isn't acknowledged; null, or why that can't be done: it will be tried again.</summary>
    public string? Undo()
    {
        if (!_hasLeftovers)
        {
            return null;
        }

        try
        {
            Restored();
            _hasLeftovers = false;
            return null;
        }
        catch (Exception e) when (DiskTrouble.Is(e))
        {
            return DiskTrouble.InWords(e);
        }
    }

    /// <summary>Lets go of the file as it is; whoever wants leftovers gone says so before.</summary>
    public void Dispose() => _file?.Dispose();

    private FileStream Opened() => _file ??= disk.Open(path, FileMode.Open);

    private FileStream Restored()
    {
        _file?.Dispose();
        _file = null;
        FileStream file = Opened();
        if (Fault(file, Length + (_hasLeftovers ? _attempted : 0)) is { } fault)
        {
            throw new IOException(fault);
        }

        disk.Cut(file, Length);
        disk.Flush(file);
        disk.Forget(file, 0);
        using FileStream again = Disk.OpenForReading(path);
        TrailSummary there = TrailCheck.Summarise(again, of);
        return there.Length == Length && there.Last == _last
            ? file
            : throw new IOException(
                "What was recorded before can't be read from the disk any more: it may be failing. Keep the folder as it is, and copy it."
            );
    }

    // Null when the file ends with what was acknowledged, and with no more than a failed write can have left.
    private string? Fault(FileStream file, long longest)
    {
        long there = RandomAccess.GetLength(file.SafeFileHandle);
        return there < Length ? $"{path} is shorter than this program left it: it was cut or exchanged."
            : there > longest ? $"{path} is longer than this program left it: another program wrote to it."
            : !HasEnd(file.SafeFileHandle, Length, _last) ? $"{path} isn't as this program left it: it was exchanged."
            : null;
    }

    // The flush was of an open file: a folder that was moved away or deleted since takes it along, and nothing fails.
    private void CheckName(ReadOnlySpan<byte> line)
    {
        using SafeFileHandle named = File.OpenHandle(
            path,
            FileMode.Open,
            FileAccess.Read,
            FileShare.ReadWrite | FileShare.Delete
        );
        long expected = Length + line.Length;
        if (RandomAccess.GetLength(named) != expected || !HasEnd(named, expected, TrailLine.DigestOf(line)))
        {
            throw new IOException($"{path} was exchanged while it was written to.");
        }
    }

    private static bool HasEnd(SafeFileHandle file, long length, Digest digest)
    {
        Span<byte> there = stackalloc byte[Digest.HexLength + 1];
        Span<byte> expected = stackalloc byte[Digest.HexLength + 1];
        Encoding.ASCII.GetBytes(digest.ToString(), expected);
        expected[^1] = (byte)'\n';
        return length == 0
            || (RandomAccess.Read(file, there, length - there.Length) == there.Length && there.SequenceEqual(expected));
    }
}
