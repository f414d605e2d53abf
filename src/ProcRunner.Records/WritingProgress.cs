namespace ProcRunner.Records;

/// <summary>How far the writing of a record has got, and whether it is to stop.</summary>
/// <param name="report">Told how many pieces of how many are written.</param>
/// <param name="stop">Ends the writing.</param>
public sealed class WritingProgress(Action<int, int>? report, CancellationToken stop)
{
    /// <summary>Progress that nobody watches.</summary>
    public static WritingProgress None { get; } = new(null, CancellationToken.None);

    /// <summary>A piece is written.</summary>
    /// <exception cref="OperationCanceledException">The writing is to stop.</exception>
    public void Report(int done, int of)
    {
        stop.ThrowIfCancellationRequested();
        report?.Invoke(done, of);
    }
}
