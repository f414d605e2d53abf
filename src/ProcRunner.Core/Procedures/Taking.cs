using ProcRunner.Formulas;

namespace ProcRunner.Procedures;

/// <summary>One characteristic taken by a step, with what it is judged against.</summary>
public sealed record Taking
{
    /// <summary>The characteristic.</summary>
    public required string Characteristic { get; init; }

    /// <summary>The places asked for here; the characteristic's own unless the step says otherwise.</summary>
    public required IReadOnlyList<string> Places { get; init; }

    /// <summary>What it is judged against.</summary>
    public required Window Window { get; init; }

    /// <summary>Added to low, aim and high: the skim still to come.</summary>
    public Formula? Shift { get; init; }

    /// <summary>Greatest spread between the places, or null.</summary>
    public Formula? Spread { get; init; }

    /// <summary>Values worked out from it.</summary>
    public IReadOnlyList<WorkOut> WorksOut { get; init; } = [];

    /// <summary>Kind of gauge, or null when none is asked for.</summary>
    public string? GaugeKind { get; init; }

    /// <summary>The zone must be at least this many times as wide as the gauge's interval of uncertainty (N:1).</summary>
    public decimal GaugeRatio { get; init; } = 4;

    /// <summary>After the first value out of limits only a retest is offered, this way; null: all ways at once.</summary>
    public string? RetestFirst { get; init; }

    /// <summary>Every limit of the head spec that it is judged against, with the characteristic that is judged.</summary>
    public IEnumerable<(string Limit, string Characteristic)> SpecLimits
    {
        get
        {
            IEnumerable<(Window Window, string Of)> all = WorksOut
                .Select(work => (work.Window, work.Name))
                .Prepend((Window, Characteristic));
            return all.Where(one => one.Window is Window.FromSpec)
                .Select(one => (((Window.FromSpec)one.Window).LimitName, one.Of));
        }
    }
}
