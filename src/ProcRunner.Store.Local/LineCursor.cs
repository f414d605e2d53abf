namespace ProcRunner.Store.Local;

/// <summary>Walks over lines, each with its LF; the last may lack one.</summary>
internal ref struct LineCursor(ReadOnlyMemory<byte> bytes)
{
    private readonly ReadOnlyMemory<byte> _bytes = bytes;

    /// <summary>Where the next line begins.</summary>
    public int Position { get; private set; }

    /// <summary>True when nothing is left.</summary>
    public readonly bool AtEnd => Position == _bytes.Length;

    /// <summary>True when the next line begins so.</summary>
    public readonly bool IsNext(ReadOnlySpan<byte> start) => _bytes.Span[Position..].StartsWith(start);

    /// <summary>The bytes from a place up to here.</summary>
    public readonly ReadOnlyMemory<byte> Since(int start) => _bytes[start..Position];

    /// <summary>The next line; empty at the end.</summary>
    public ReadOnlySpan<byte> Next()
    {
        ReadOnlySpan<byte> rest = _bytes.Span[Position..];
        int newline = rest.IndexOf((byte)'\n');
        ReadOnlySpan<byte> line = newline < 0 ? rest : rest[..(newline + 1)];
        Position += line.Length;
        return line;
    }
}
