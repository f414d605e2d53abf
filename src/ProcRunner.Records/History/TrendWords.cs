using System.Globalization;
using ProcRunner.ShopMath;

namespace ProcRunner.Records.History;

/// <summary>A reading's history in lines for a person.</summary>
public sealed class TrendWords
{
    private const int RoomyFrom = 100;
    private const int RoomyHeight = 13;
    private const int ChartHeight = 9;
    private readonly Trend _trend;
    private readonly int _digits;

    /// <summary>The words for a history.</summary>
    public TrendWords(Trend trend)
    {
        _trend = trend;
        _digits = Math.Max(4, trend.Digits + 1);
    }

    /// <summary>All of it: each group's chart, figures and last reading out of spec.</summary>
    /// <param name="width">Columns.</param>
    /// <param name="whose">What the groups are, as "gauge"; empty for all together.</param>
    /// <param name="nameOf">How a group's name is shown.</param>
    public IEnumerable<string> Lines(int width, string whose, Func<string, string> nameOf)
    {
        string leftOut =
            _trend.LeftOut > 0 ? $"{Count(_trend.LeftOut)} without an aim, or of something else, left out" : "";
        if (_trend.IsFromAim)
        {
            yield return $"Each reading less its aim, since aims differ{(leftOut.Length > 0 ? $"; {leftOut}" : "")}.";
        }
        else if (leftOut.Length > 0)
        {
            yield return $"{leftOut}.";
        }

        foreach (TrendGroup group in _trend.Groups)
        {
            if (whose.Length > 0)
            {
                yield return "";
                yield return group.Name.Length == 0 ? $"== no {whose} known ==" : $"== {whose} {nameOf(group.Name)} ==";
            }

            foreach (string line in Lines(group, width))
            {
                yield return line;
            }
        }
    }

    // What it comes to stands above the chart, so that a small screen has it on its first page.
    private IEnumerable<string> Lines(TrendGroup group, int width)
    {
        yield return Counted(group);
        yield return LastOut(group);
        foreach (string line in Spread(group))
        {
            yield return line;
        }

        int shown = 0;
        foreach (
            string line in RunChart.Draw(_trend, group, width, width < RoomyFrom ? ChartHeight : RoomyHeight, Figure)
        )
        {
            shown = Math.Max(shown, line.Length - line.IndexOf('|', StringComparison.Ordinal) - 1);
            yield return line;
        }

        yield return RunChart.Legend;
        if (shown < group.Readings.Count)
        {
            yield return $"The last {Number(shown)} of {Number(group.Readings.Count)} readings are drawn; all are counted.";
        }

        foreach (string line in Control(group))
        {
            yield return line;
        }
    }

    private static string Counted(TrendGroup group)
    {
        string days = group.Readings.Count == 0 ? "" : $", {Day(group.Readings[0].At)} to {Day(group.Readings[^1].At)}";
        return $"{Count(group.Readings.Count)}{days}, {Number(group.OutCount)} out of spec";
    }

    private IEnumerable<string> Spread(TrendGroup group)
    {
        if (group.IsTooFew)
        {
            yield return $"{Count(group.Readings.Count)}: too few to judge";
            yield break;
        }

        if (group.Readings.Count < Trend.Steady)
        {
            yield return $"{Count(group.Readings.Count)}: a first guess, {Number(Trend.Steady)} and more say more";
        }

        foreach (KindCapability kind in group.Capabilities)
        {
            yield return Capable(kind);
        }
    }

    private IEnumerable<string> Control(TrendGroup group)
    {
        if (group.Limits is { } limits)
        {
            yield return $"mean {Figure(limits.Mean)}{Unit}; control limits {Figure(limits.Low)} to {Figure(limits.High)}{Unit} (mean moving range {Figure(limits.MeanRange)}, its limit {Figure(limits.RangeHigh)})";
            yield return group.Strays.Count == 0
                ? "no reading outside the control limits"
                : $"{Count(group.Strays.Count)} outside the control limits, the last {Where(group.Readings[group.Strays[^1]])}";
        }
    }

    private string Capable(KindCapability kind)
    {
        string name = kind.Kind.Length == 0 ? "" : $"{kind.Kind}: ";
        string what = kind.FromAim ? "off the aim by" : "mean";
        string limits =
            kind.Low is { } low && kind.High is { } high ? $"within {Signed(low, kind)} to {Signed(high, kind)}{Unit}"
            : kind.High is { } top ? $"at most {Signed(top, kind)}{Unit}"
            : kind.Low is { } bottom ? $"at least {Signed(bottom, kind)}{Unit}"
            : "no limits";
        string found =
            $"{name}{Count(kind.Count)} {limits}: {what} {Signed(kind.Mean, kind)}, standard deviation {Figure(kind.Deviation)}";
        return kind.Capability is { } capability ? $"{found}; {Index(capability)}"
            : kind.Count < Trend.Least ? $"{found}; too few for a capability"
            : $"{found}; no capability";
    }

    private static string Index(Capability capability) =>
        capability.Cp is { } cp
            ? string.Create(CultureInfo.InvariantCulture, $"Cp {cp:0.00}, Cpk {capability.Cpk:0.00}")
            : string.Create(CultureInfo.InvariantCulture, $"Cpk {capability.Cpk:0.00} (one limit)");

    private static string LastOut(TrendGroup group) =>
        group.LastOut is { } last ? $"last out of spec: {last.Value}, {Where(last)}" : "none out of spec";

    private static string Where(TrendReading reading) =>
        $"{Day(reading.At)} on {reading.Stamp} at {reading.Position}{(reading.Person.Length > 0 ? $", {reading.Person}" : "")}{(reading.Gauge.Length > 0 ? $", gauge {reading.Gauge}" : "")}";

    private string Signed(double value, KindCapability kind) =>
        kind.FromAim && value > 0 ? $"+{Figure(value)}" : Figure(value);

    private string Unit => _trend.Unit.Symbol.Length == 0 ? "" : $" {_trend.Unit.Symbol}";

    private string Figure(double value) => value.ToString($"F{Number(_digits)}", CultureInfo.InvariantCulture);

    private static string Count(int count) => count == 1 ? "1 reading" : $"{Number(count)} readings";

    private static string Day(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
