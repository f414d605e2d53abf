using System.Buffers;
using System.Numerics;

namespace ProcRunner.Store.Local;

/// <summary>How well each job fits, by its place in the catalogue: a byte each, so that a hundred thousand stay near the processor.</summary>
internal sealed class JobRanks : IDisposable
{
    private readonly int _size;
    private byte[] _ranks;

    /// <summary>Nothing fits yet.</summary>
    /// <param name="size">How many places there are.</param>
    public JobRanks(int size)
    {
        // An array of this length that is thrown away after each search would have the whole memory gone through for it.
        (_size, _ranks) = (size, ArrayPool<byte>.Shared.Rent(size));
        _ranks.AsSpan(0, size).Clear();
    }

    /// <summary>The rank at a place; 0 where nothing fits.</summary>
    public byte this[int place] => _ranks[place];

    /// <summary>True when some job fits.</summary>
    public bool Any => _ranks.AsSpan(0, _size).ContainsAnyExcept((byte)0);

    /// <summary>A job fits; of several ranks the best counts.</summary>
    public void Raise(int place, byte rank)
    {
        if (_ranks[place] < rank)
        {
            _ranks[place] = rank;
        }
    }

    /// <summary>Keeps the jobs that fit here and there, each with the better of its ranks.</summary>
    public void KeepBoth(JobRanks other)
    {
        Span<byte> here = _ranks.AsSpan(0, _size);
        ReadOnlySpan<byte> there = other._ranks.AsSpan(0, _size);
        int i = 0;
        for (; i <= here.Length - Vector<byte>.Count; i += Vector<byte>.Count)
        {
            Vector<byte> a = new(here[i..]);
            Vector<byte> b = new(there[i..]);
            Vector<byte> none = Vector.Equals(a, Vector<byte>.Zero) | Vector.Equals(b, Vector<byte>.Zero);
            Vector.AndNot(Vector.Max(a, b), none).CopyTo(here[i..]);
        }

        for (; i < here.Length; i++)
        {
            here[i] = here[i] == 0 || there[i] == 0 ? (byte)0 : Math.Max(here[i], there[i]);
        }
    }

    /// <summary>Gives the memory back.</summary>
    public void Dispose()
    {
        byte[] ranks = _ranks;
        _ranks = [];
        if (ranks.Length > 0)
        {
            ArrayPool<byte>.Shared.Return(ranks);
        }
    }
}
