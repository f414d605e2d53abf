using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Finds heads by stamp, customer, part, lot or proof code.</summary>
/// <param name="session">The session.</param>
internal sealed class FindForm(ShopSession session) : FormScreen(session)
{
    private IReadOnlyList<JobEntry> _found = [];

    /// <inheritdoc/>
    protected override string Title => "Find a head";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; } =
    [
        new("Find")
        {
            Hint = () =>
                "A stamp, or a piece of it; a customer; a part, its number or its lot; the proof code on a paper record. Heads of all years are searched, released ones too.",
        },
    ];

    /// <inheritdoc/>
    protected override string? Write()
    {
        string text = Fields[0].Text;
        (_found, string trouble) = JobLedger.Search(session.Store, text);
        Fields[0].Value = null;
        return trouble.Length > 0 ? trouble
            : _found.Count == 0 ? $"Nothing was found for {Fitting.Line(text, 40)}."
            : null;
    }

    /// <inheritdoc/>
    protected override Turn Done()
    {
        IReadOnlyList<JobEntry> found = _found;
        return new Turn.To(new PickJobScreen(session, "Found", () => found));
    }
}
