using System.Globalization;
using ProcRunner.Records;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Shows how far a build record is written, and stops it; half a file is never left.</summary>
internal sealed class RecordWritingScreen : FramedScreen
{
    private readonly string _stamp;
    private readonly string _path;
    private readonly Action<int, int>? _told;
    private readonly Task<string> _writing;
    private (int Done, int Of) _reached;
    private volatile bool _isStopped;

    /// <summary>Begins the writing.</summary>
    /// <param name="session">The session.</param>
    /// <param name="job">The job.</param>
    /// <param name="path">The file.</param>
    /// <param name="isPractice">True for a practice head.</param>
    /// <param name="told">Told of each piece, on the writing's own thread.</param>
    public RecordWritingScreen(
        ShopSession session,
        ShopJob job,
        string path,
        bool isPractice,
        Action<int, int>? told = null
    )
        : base(session)
    {
        (_stamp, _path, IsPractice, _told) = (job.Stamp, path, isPractice, told);
        WritingProgress progress = new(Reach, CancellationToken.None);
        _writing = Task.Run(() => Write(session, job, progress));
    }

    /// <inheritdoc/>
    public override bool IsPractice { get; }

    /// <summary>The writing, for who waits for its end.</summary>
    public Task Writing => _writing;

    /// <inheritdoc/>
    protected override string Title => $"{_stamp}: build record";

    /// <inheritdoc/>
    protected override string Asks => _writing.IsCompleted ? "Go on" : "Stop";

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Keys => [_writing.IsCompleted ? "Enter or / goes back" : "/ stops it"];

    /// <inheritdoc/>
    protected override void DrawBody(Canvas canvas, Look look, Area area)
    {
        (int done, int of) = _reached;
        string words =
            _writing.IsCompleted ? _writing.Result
            : _isStopped ? "Stopping."
            : of == 0 ? "Checking the trail."
            : string.Create(CultureInfo.InvariantCulture, $"Writing: {done} of {of} pieces.");
        canvas.PutWrapped(area.Column, area.Row, area.Width, area.Height, words);
    }

    /// <inheritdoc/>
    protected override Turn Entered(string text) => _writing.IsCompleted ? Turn.Back : Turn.Stay;

    /// <inheritdoc/>
    protected override Turn? First(string character) => character == "/" ? Escaped() : base.First(character);

    /// <inheritdoc/>
    protected override Turn Escaped()
    {
        bool isOver = _writing.IsCompleted;
        _isStopped = true;
        return isOver ? Turn.Back : Turn.Stay;
    }

    private void Reach(int done, int of)
    {
        _told?.Invoke(done, of);
        if (_isStopped)
        {
            throw new OperationCanceledException();
        }

        _reached = (done, of);
    }

    private string Write(ShopSession session, ShopJob job, WritingProgress progress)
    {
        try
        {
            string fault = RecordExport.Write(session.Store.Reader, job, _path, progress);
            return fault.Length == 0 ? $"Written: {_path}" : fault;
        }
        catch (OperationCanceledException)
        {
            return "Stopped. Nothing was written.";
        }
        catch (Exception e) when (DiskTrouble.Is(e))
        {
            return $"{_path} can't be written. {DiskTrouble.InWords(e)}";
        }
    }
}
