using System.Buffers;
using System.Numerics;
using System.Runtime.Intrinsics;

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

    /// <summary>The same as these.</summary>
    public JobRanks(ReadOnlySpan<byte> ranks)
    {
        (_size, _ranks) = (ranks.Length, ArrayPool<byte>.Shared.Rent(ranks.Length));
        ranks.CopyTo(_ranks);
    }

    /// <summary>The rank at a place; 0 where nothing fits.</summary>
    public byte this[int place] => _ranks[place];

    /// <summary>Every place's rank.</summary>
    public Span<byte> All => _ranks.AsSpan(0, _size);

    /// <summary>A job fits; of several ranks the best counts.</summary>
    public void Raise(int place, byte rank)
    {
        if (_ranks[place] < rank)
        {
            _ranks[place] = rank;
        }
    }

    /// <summary>True when some job fits here and there.</summary>
    public bool FitsAnyOf(JobRanks other)
    {
        ReadOnlySpan<byte> here = All;
        ReadOnlySpan<byte> there = other.All;
        for (int i = 0; i < here.Length; i++)
        {
            if (here[i] != 0 && there[i] != 0)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>
    /// Of the jobs that fit so far, how many a text of this rank could still change: those that don't fit here yet, and those whose
    /// better rank of the two is lower.
    /// </summary>
    /// <param name="soFar">The ranks from all else that was looked for.</param>
    /// <param name="rank">The best rank that is still to come here.</param>
    public int OpenBelow(JobRanks soFar, byte rank)
    {
        ReadOnlySpan<byte> here = All;
        ReadOnlySpan<byte> there = soFar.All;
        Vector128<byte> least = Vector128.Create(rank);
        int open = 0;
        int i = 0;
        for (; i <= here.Length - Vector128<byte>.Count; i += Vector128<byte>.Count)
        {
            Vector128<byte> a = Vector128.Create(here[i..]);
            Vector128<byte> b = Vector128.Create(there[i..]);
            Vector128<byte> isOpen =
                Vector128.Equals(a, Vector128<byte>.Zero) | Vector128.LessThan(Vector128.Max(a, b), least);
            isOpen = Vector128.AndNot(isOpen, Vector128.Equals(b, Vector128<byte>.Zero));
            open += BitOperations.PopCount(isOpen.ExtractMostSignificantBits());
        }

        for (; i < here.Length; i++)
        {
            open += IsOpenBelow(soFar, i, rank) ? 1 : 0;
        }

        return open;
    }

    /// <summary>True when a text of this rank could still change a job that fits so far.</summary>
    public bool IsOpenBelow(JobRanks soFar, int place, byte rank) =>
        soFar[place] != 0 && (_ranks[place] == 0 || Math.Max(_ranks[place], soFar[place]) < rank);

    /// <summary>Keeps the jobs that fit here and there, each with the better of its ranks.</summary>
    public void KeepBoth(JobRanks other)
    {
        Span<byte> here = All;
        ReadOnlySpan<byte> there = other.All;
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
