namespace ProcRunner.Practice.Chances;

/// <summary>
/// SplitMix64 as a function of a counter: number n of a stream is the mix of key + (n + 1) gamma. Source: S. Vigna's public
/// splitmix64.c (https://prng.di.unimi.it/splitmix64.c); gamma and multipliers are that program's.
/// </summary>
public static class SplitMix
{
    private const ulong Gamma = 0x9E3779B97F4A7C15;

    /// <summary>Number <paramref name="n"/> of the stream <paramref name="key"/>, from 0.</summary>
    public static ulong At(ulong key, ulong n) => Mix(unchecked(key + ((n + 1) * Gamma)));

    /// <summary>The key of a stream inside another one.</summary>
    public static ulong Inside(ulong key, ulong of) => Mix(unchecked(Mix(key ^ Gamma) + (of * Gamma)));

    /// <summary>The key of a stream named by a text: FNV-1a over its characters, the same on every machine.</summary>
    public static ulong Inside(ulong key, string of)
    {
        ulong hash = 0xCBF29CE484222325;
        foreach (char letter in of)
        {
            hash = unchecked((hash ^ letter) * 0x100000001B3);
        }

        return Inside(key, hash);
    }

    private static ulong Mix(ulong z)
    {
        unchecked
        {
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }
}
