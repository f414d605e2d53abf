using ProcRunner.Store.Local;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Narrows a search to the heads that were in the shop between two days.</summary>
internal sealed class DaysForm : FormScreen
{
    private readonly ShopSession _session;
    private readonly JobQuery _query;
    private readonly Field _from;
    private readonly Field _to;

    /// <summary>The form.</summary>
    public DaysForm(ShopSession session, JobQuery query)
        : base(session)
    {
        (_session, _query) = (session, query);
        _from = Day("from", "The first day on which something was done on them. May stay empty.");
        _to = Day("to", "The last day on which they were taken in. May stay empty.");
        Fields = [_from, _to];
    }

    /// <inheritdoc/>
    protected override string Title => "Heads of which days?";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; }

    /// <inheritdoc/>
    protected override string? Write() => null;

    /// <inheritdoc/>
    protected override Turn Done() =>
        new Turn.Instead(new FoundScreen(_session, _query with { From = Begin(_from, 0), Before = Begin(_to, 1) }));

    private DateTimeOffset? Begin(Field field, int daysLater)
    {
        if (DayField.Read(field.Text) is not { } day)
        {
            return null;
        }

        DateTime local = day.AddDays(daysLater).ToDateTime(TimeOnly.MinValue);
        return new DateTimeOffset(local, _session.Time.LocalTimeZone.GetUtcOffset(local));
    }

    private static Field Day(string label, string hint) =>
        new(label)
        {
            Hint = () => $"{hint} As 2031.4.7 or 20310407.",
            MayBeEmpty = true,
            Fault = text => text.Length == 0 || DayField.Read(text) is not null ? null : $"{text} is no day.",
        };
}
