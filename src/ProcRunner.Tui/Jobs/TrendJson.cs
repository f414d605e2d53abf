using System.Globalization;
using ProcRunner.Records.History;
using ProcRunner.Trail;

namespace ProcRunner.Tui.Jobs;

/// <summary>A reading's history for scripts. Figures are texts of up to fifteen digits, in the unit that stands beside them.</summary>
internal static class TrendJson
{
    /// <summary>The history.</summary>
    public static Json.Map Of(string name, Trend trend) =>
        Json.MapOf(
            ("reading", new Json.Text(name)),
            ("unit", new Json.Text(trend.Unit.Symbol)),
            ("from-aim", new Json.Flag(trend.IsFromAim)),
            ("groups", Json.ListOf([.. trend.Groups.Select(Group)]))
        );

    private static Json Group(TrendGroup group) =>
        Json.MapOf(
            ("of", new Json.Text(group.Name)),
            ("count", new Json.Whole(group.Readings.Count)),
            ("out", new Json.Whole(group.OutCount)),
            ("too-few", new Json.Flag(group.IsTooFew)),
            ("mean", Figure(group.Mean)),
            ("control-low", Figure(group.Limits?.Low)),
            ("control-high", Figure(group.Limits?.High)),
            ("mean-moving-range", Figure(group.Limits?.MeanRange)),
            ("outside-control", new Json.Whole(group.Strays.Count)),
            ("last-out", group.LastOut is { } last ? Reading(last) : Json.Nothing),
            ("capability", Json.ListOf([.. group.Capabilities.Select(Kind)])),
            ("readings", Json.ListOf([.. group.Readings.Select(Reading)]))
        );

    private static Json Kind(KindCapability kind) =>
        Json.MapOf(
            ("kind", new Json.Text(kind.Kind)),
            ("count", new Json.Whole(kind.Count)),
            ("from-aim", new Json.Flag(kind.FromAim)),
            ("mean", Figure(kind.Mean)),
            ("standard-deviation", Figure(kind.Deviation)),
            ("low", Figure(kind.Low)),
            ("high", Figure(kind.High)),
            ("cp", Figure(kind.Capability?.Cp)),
            ("cpk", Figure(kind.Capability?.Cpk)),
            ("upper", Figure(kind.Capability?.Upper)),
            ("lower", Figure(kind.Capability?.Lower))
        );

    private static Json Reading(TrendReading reading) =>
        Json.MapOf(
            ("at", new Json.Text(JobListing.Second(reading.At))),
            ("value", new Json.Text(reading.Value.ToString())),
            ("stamp", new Json.Text(reading.Stamp)),
            ("position", new Json.Text(reading.Position)),
            ("person", new Json.Text(reading.Person)),
            ("gauge", new Json.Text(reading.Gauge)),
            ("cutter", new Json.Text(reading.Cutter)),
            ("out", new Json.Flag(reading.IsOut))
        );

    private static Json Figure(double? value) =>
        value is { } known ? new Json.Text(known.ToString("G15", CultureInfo.InvariantCulture)) : Json.Nothing;
}
