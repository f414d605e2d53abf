namespace ProcRunner.Yaml.Plans;

/// <summary>A kind of step as files write it, and the keys that it has a use for.</summary>
internal sealed record StepKind
{
    private static readonly string[] Common =
    [
        "named",
        "for",
        "only-where",
        "say",
        "why",
        "shows",
        "cautions",
        "rests-on",
        "moves",
        "may-be-left-out",
        "is-work",
    ];

    private static readonly string[] OfTaking =
    [
        "window",
        "shift",
        "spread",
        "places",
        "gauge",
        "gauge-ratio",
        "retest-first",
        "works-out",
        "ways-on",
    ];

    private StepKind(string word, params string[] keys)
    {
        Word = word;
        Keys = [word, .. Common, .. keys];
    }

    /// <summary>The key that makes a step one of this kind.</summary>
    public string Word { get; }

    /// <summary>Every key it has a use for.</summary>
    public IReadOnlyList<string> Keys { get; private init; }

    public static StepKind Do { get; } = new("do");

    public static StepKind Inspect { get; } = new("inspect", "findings", "ways-on");

    public static StepKind Measure { get; } = new("measure", OfTaking);

    public static StepKind Zero { get; } = new("zero", ["from", .. OfTaking]);

    public static StepKind Cut { get; } = new("cut", ["zero", "stop-short", "agree-within", .. OfTaking]);

    public static StepKind Fit { get; } = new("fit");

    public static StepKind Decide { get; } = new("decide", "choices");

    public static StepKind Sign { get; } =
        new("sign") { Keys = ["sign", "named", "signed-by", "only-where", "say", "why", "cautions"] };

    /// <summary>All kinds; the cut stands before the zero, which is one of its keys as well.</summary>
    public static IReadOnlyList<StepKind> All { get; } = [Do, Inspect, Measure, Cut, Zero, Fit, Decide, Sign];

    /// <summary>Every key that some kind has a use for.</summary>
    public static IReadOnlyList<string> AllKeys { get; } =
    [.. All.SelectMany(kind => kind.Keys).Distinct(StringComparer.Ordinal)];

    /// <summary>Keys that only a step with a reading has a use for.</summary>
    public static IReadOnlyList<string> TakingKeys => OfTaking;
}
