namespace ProcRunner.Tests.Storage;

/// <summary>
/// A file as a power cut sees it: what is on the medium, and what the system still holds back. The system holds back whole pages; of
/// those the medium takes single sectors, in any order.
/// </summary>
internal sealed class CachedFile
{
    private const int Page = 4096;
    private const int Sector = 512;

    private readonly List<(long At, byte[] Bytes)> _pages = [];
    private readonly List<long> _lengths = [];
    private byte[] _medium = [];

    /// <summary>A file that is on the medium as it is.</summary>
    public static CachedFile OnMedium(byte[] bytes) => new() { _medium = bytes };

    /// <summary>What is on the medium.</summary>
    public byte[] Medium => _medium;

    /// <summary>A write: the pages that it touched are held back, as they are now.</summary>
    public void Wrote(FileStream file, long offset, int count)
    {
        long first = offset / Page * Page;
        long length = RandomAccess.GetLength(file.SafeFileHandle);
        byte[] pages = new byte[Math.Min((offset + count + Page - 1) / Page * Page, length) - first];
        RandomAccess.Read(file.SafeFileHandle, pages, first);
        _pages.Add((first, pages));
        _lengths.Add(length);
    }

    /// <summary>A new length, which is held back too.</summary>
    public void Became(long length) => _lengths.Add(length);

    /// <summary>All that is held back gets to the medium.</summary>
    public void Flush()
    {
        _medium = Taken(_ => true, _lengths.Count);
        Drop();
    }

    /// <summary>
    /// As Linux does when a flush fails: some of it got to the medium, and all of it is taken as done from now on, so that the next
    /// flush succeeds without it.
    /// </summary>
    public void FailToFlush(Random random)
    {
        _medium = AfterPowerCut(random);
        Drop();
    }

    /// <summary>What is on the medium when the power fails: any of the sectors held back, and any of the lengths.</summary>
    public byte[] AfterPowerCut(Random random)
    {
        double share = random.Next(4) switch
        {
            0 => 0,
            1 => 1,
            _ => random.NextDouble(),
        };
        return Taken(_ => random.NextDouble() < share, random.Next(_lengths.Count + 1));
    }

    private void Drop()
    {
        _pages.Clear();
        _lengths.Clear();
    }

    private byte[] Taken(Func<long, bool> takes, int lengths)
    {
        long length = lengths == 0 ? _medium.Length : _lengths[lengths - 1];
        long largest = Math.Max(_medium.Length, _pages.Select(p => p.At + p.Bytes.Length).Append(length).Max());
        byte[] bytes = new byte[largest];
        _medium.CopyTo(bytes, 0);

        // What a cut took away is zeros when the file grows again.
        foreach (long cut in _lengths.Take(lengths))
        {
            bytes.AsSpan((int)Math.Min(cut, bytes.Length)).Clear();
        }

        foreach ((long at, byte[] page) in _pages)
        {
            for (int from = 0; from < page.Length; from += Sector)
            {
                if (takes(at + from))
                {
                    page.AsSpan(from, Math.Min(Sector, page.Length - from)).CopyTo(bytes.AsSpan((int)at + from));
                }
            }
        }

        return bytes[..(int)length];
    }
}
