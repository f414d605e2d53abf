using ProcRunner.Store.Local;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Finds heads by whatever is known of them.</summary>
/// <param name="session">The session.</param>
internal sealed class FindForm(ShopSession session) : FormScreen(session)
{
    private FoundScreen? _found;

    /// <inheritdoc/>
    protected override string Title => "Find a head";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; } =
    [
        new("Find")
        {
            Hint = () =>
                "A stamp, or what can be read of it; a customer, head family, part, lot, gauge, cutter, person, words of a note, the proof code on a record. Of several words each must stand somewhere. Heads of all years are searched, released ones too.",
        },
    ];

    /// <inheritdoc/>
    protected override string? Write()
    {
        JobQuery query = new() { Text = Fields[0].Text };
        Fields[0].Value = null;
        _found = new FoundScreen(session, query);
        return _found.Trouble.Length > 0 ? _found.Trouble
            : _found.IsEmpty ? $"Nothing was found for {Fitting.Line(query.Text, 40)}."
            : null;
    }

    /// <inheritdoc/>
    protected override Turn Done() => new Turn.To(_found!);
}
