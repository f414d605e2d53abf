using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>The readings that the shop has a history of.</summary>
/// <param name="session">The session.</param>
internal sealed class ReadingsScreen(ShopSession session) : ListScreen(session)
{
    private readonly IReadOnlyList<string> _names = session.Store.Index is { } index ? ReadingHistory.Names(index) : [];

    /// <inheritdoc/>
    protected override string Title => "History of which reading?";

    /// <inheritdoc/>
    protected override IReadOnlyList<ListColumn> Columns { get; } = [new("", 0, 0)];

    /// <inheritdoc/>
    protected override int Count => _names.Count;

    /// <inheritdoc/>
    protected override string Nothing => "Nothing was read in this shop yet.";

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Cells(int index, Look look) => [_names[index]];

    /// <inheritdoc/>
    protected override Turn Chosen(int index) => new Turn.To(new TrendScreen(session, _names[index]));

    /// <inheritdoc/>
    protected override Turn Other(string text) =>
        ReadingHistory.Meant(_names, text) is { } name
            ? new Turn.To(new TrendScreen(session, name))
            : Refuse($"No one reading is meant by {text}.");
}
