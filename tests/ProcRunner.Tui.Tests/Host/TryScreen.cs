using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Screens;

namespace ProcRunner.Tui.Tests.Host;

/// <summary>A screen that shows its entry and remembers its keys.</summary>
internal sealed class TryScreen : Screen
{
    private readonly EntryLine _line = new();

    /// <summary>The keys it got.</summary>
    public List<KeyPress> Keys { get; } = [];

    /// <summary>Characters of every ink, in a row each.</summary>
    public string Sample { get; init; } = "sample";

    /// <inheritdoc/>
    public override bool RingsBell { get; }

    public TryScreen(bool ringsBell = false) => RingsBell = ringsBell;

    /// <inheritdoc/>
    public override void Draw(Canvas canvas, Look look)
    {
        foreach (Ink ink in Enum.GetValues<Ink>())
        {
            canvas.Put(0, (int)ink, $"{ink} {Sample} {look.Glyphs.Full}", ink);
        }

        canvas.PutRight(canvas.Width, 0, look.Now.ToString("HH:mm:ss", null));
        canvas.Cursor = (canvas.Put(0, canvas.Height - 1, "> " + _line.Text), canvas.Height - 1);
    }

    /// <inheritdoc/>
    public override Turn Press(KeyPress key)
    {
        Keys.Add(key);
        _line.Press(key);
        return key.Text switch
        {
            "!" => new Turn.To(new TryScreen(ringsBell: true)),
            "q" => new Turn.Leave(),
            _ => Turn.Stay,
        };
    }
}
