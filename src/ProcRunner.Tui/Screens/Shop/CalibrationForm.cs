using ProcRunner.Shop;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>A gauge was calibrated: until when that holds.</summary>
internal sealed class CalibrationForm : FormScreen
{
    private readonly ShopSession _session;
    private readonly Gauge _gauge;
    private readonly Field _until;

    /// <summary>The form.</summary>
    public CalibrationForm(ShopSession session, Gauge gauge)
        : base(session)
    {
        (_session, _gauge) = (session, gauge);
        _until = DayField.Of(DateOnly.FromDateTime(session.Time.GetLocalNow().Date), gauge.CalibratedUntil);
        Fields = [_until];
    }

    /// <inheritdoc/>
    protected override string Title => $"{_gauge.Id}  {_gauge.Name}";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; }

    /// <inheritdoc/>
    protected override string? Write()
    {
        string? fault = _session.Desk.ChangeGauge(
            _gauge with
            {
                CalibratedUntil = DayField.Read(_until.Text),
            },
            _session.Person
        );
        _session.LeaveWord(fault is null ? $"{_gauge.Id}: calibrated until {_until.Text}." : "");
        return fault;
    }
}
