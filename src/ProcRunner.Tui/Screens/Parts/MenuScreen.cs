namespace ProcRunner.Tui.Screens.Parts;

/// <summary>A few numbered things to do.</summary>
/// <param name="words">What the frame says besides.</param>
/// <param name="title">What the menu is about.</param>
/// <param name="intro">What stands above it, as it is now.</param>
/// <param name="items">The things, as they are now.</param>
internal sealed class MenuScreen(
    IFrameWords words,
    string title,
    Func<string> intro,
    Func<IReadOnlyList<MenuItem>> items
) : ListScreen(words)
{
    private IReadOnlyList<MenuItem> _items = items();

    /// <inheritdoc/>
    protected override string Title => title;

    /// <inheritdoc/>
    protected override string Intro => intro();

    /// <inheritdoc/>
    protected override IReadOnlyList<ListColumn> Columns { get; } = [new("", 0, 0)];

    /// <inheritdoc/>
    protected override int Count => _items.Count;

    /// <inheritdoc/>
    public override void Return()
    {
        _items = items();
        base.Return();
    }

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Cells(int index, Look look) => [_items[index].Text()];

    /// <inheritdoc/>
    protected override Turn Chosen(int index)
    {
        Turn turn = _items[index].Choose();
        if (turn is Turn.Here)
        {
            Return();
        }

        return turn;
    }
}
