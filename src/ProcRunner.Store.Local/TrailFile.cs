using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>A trail that is being written: the file and where the chain has got to.</summary>
internal sealed class TrailFile(string of, AppendOnlyFile file, long sequence, Digest last, bool isClosedOut)
    : IDisposable
{
    public string Of { get; } = of;

    public AppendOnlyFile File { get; } = file;

    public long Sequence { get; private set; } = sequence;

    public Digest Last { get; private set; } = last;

    public bool IsClosedOut { get; private set; } = isClosedOut;

    /// <summary>How far this trail has got.</summary>
    public BookMark Mark => new(Sequence, Last);

    /// <summary>Moves on past a line that is on the medium.</summary>
    public void Acknowledge(byte[] line, Anchor anchor)
    {
        File.Acknowledge(line);
        Sequence++;
        Last = TrailLine.DigestOf(line);
        IsClosedOut = anchor == Anchor.ClosedOut;
    }

    public void Dispose() => File.Dispose();
}
