using System.Globalization;
using ProcRunner.Runs;
using ProcRunner.Shop;
using ProcRunner.Tui.Screens.Shop;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>What is measured with: which gauge, and what to do where a gauge or the readout is missing.</summary>
internal static class GaugePages
{
    /// <summary>Asks for which kind of gauge another is chosen.</summary>
    public static AskPage Kinds(RunWork work) =>
        new(work, "Which kind of gauge?")
        {
            Options =
            [
                .. work
                    .Job.Shop.Gauges.Values.Select(g => g.Kind)
                    .Distinct()
                    .Order(StringComparer.Ordinal)
                    .Select(kind => new Option(
                        kind,
                        work.State.Gauges.TryGetValue(kind, out string? id) ? $"in use: {id}" : "none chosen yet",
                        _ => new Turn.Instead(GaugeOf(work, kind))
                    )),
            ],
        };

    /// <summary>No depth can be worked to before the readout is set up.</summary>
    public static AskPage NoReadout(RunWork work) =>
        Missing(
            work,
            "The machine's readout isn't set up",
            "The number to cut to is worked out in the terms of the machine's display: its unit, its steps, which way it counts.",
            ("set it up", session => new ReadoutForm(session))
        );

    /// <summary>Chooses the gauge of a kind, or takes one into use where the shop has none.</summary>
    public static AskPage GaugeOf(RunWork work, string kind) =>
        work.Job.Shop.Gauges.Values.Any(g => g.Kind == kind)
            ? AnyGauge(work, kind)
            : Missing(
                work,
                $"The shop has no gauge of the kind \"{kind}\"",
                "Readings here are taken with one, and each says which one it was.",
                ("take one into use", session => new AddGaugeForm(session, kind))
            );

    private static AskPage Missing(
        RunWork work,
        string title,
        string why,
        (string Words, Func<ShopSession, Screen> Form) mend
    ) =>
        new(work, title)
        {
            About = [why],
            Options = work.Session is { } session ? [new(mend.Words, "", _ => Form(mend.Form(session)))] : [],
            OnEnter = ("go on, once it is there", page => page.Done()),
            Menu = true,
        };

    private static AskPage AnyGauge(RunWork work, string kind) =>
        new(work, $"Which gauge of the kind \"{kind}\"?")
        {
            OnEnter = work.Job.Shop.Gauges.Values.Any(g => g.Kind == kind && g.CalibratedUntil < work.Job.Today)
                ? ("go on, once one can be used", page => page.Done())
                : null,
            Options = [.. work.Job.Shop.Gauges.Values.Where(g => g.Kind == kind).Select(g => OneGauge(work, g))],
            Menu = true,
        };

    // One past its calibration measures nothing; its new date can be entered here.
    private static Option OneGauge(RunWork work, Gauge gauge)
    {
        string name = $"{gauge.Id}  {gauge.Name}";
        return !(gauge.CalibratedUntil < work.Job.Today)
                ? new(
                    name,
                    Calibrated(gauge),
                    page => page.Go(work.Do(new RunCommand.ChooseGauge(gauge.Kind, gauge.Id)), "")
                )
            : work.Session is { } session
                ? new(
                    name,
                    $"PAST: {Calibrated(gauge)}; enter its new date",
                    _ => Form(new CalibrationForm(session, gauge))
                )
            : new(name, $"PAST: {Calibrated(gauge)}", page => page.No($"{gauge.Id} is past its calibration.", ""));
    }

    private static Turn.To Form(Screen form) => new(form);

    private static string Calibrated(Gauge gauge) =>
        gauge.CalibratedUntil is { } until
            ? $"calibrated until {until.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}"
            : "";
}
