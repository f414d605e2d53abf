using System.Collections.Immutable;

namespace ProcRunner.Store.Local;

/// <summary>A job as it is searched for and listed. All of it follows from the job's trail.</summary>
/// <param name="Id">The job's id.</param>
/// <param name="Stamp">Its stamp.</param>
/// <param name="Customer">The customer, in the words of the job.</param>
/// <param name="State">Where the job stands, as a word.</param>
/// <param name="WaitingFor">What it waits for, for a person.</param>
/// <param name="Opened">When it was opened; kept to the tick, in UTC.</param>
/// <param name="LastActivity">When something last happened; kept to the tick, in UTC.</param>
/// <param name="Person">The id of whoever was at work last; empty when nobody was.</param>
/// <param name="Parts">The parts fitted.</param>
public sealed record IndexedJob(
    string Id,
    string Stamp,
    string Customer,
    string State,
    string WaitingFor,
    DateTimeOffset Opened,
    DateTimeOffset LastActivity,
    string Person,
    ImmutableArray<IndexedPart> Parts
)
{
    /// <summary>The head family, in words.</summary>
    public string Head { get; init; } = "";

    /// <summary>The bench of the last entry.</summary>
    public string Bench { get; init; } = "";

    /// <summary>True for a job on a practice head.</summary>
    public bool Practice { get; init; }

    /// <summary>The id of the job that this one is a comeback of; empty for none.</summary>
    public string Earlier { get; init; } = "";

    /// <summary>The ids of the jobs on the other heads of the same engine.</summary>
    public ImmutableArray<string> Linked { get; init; } = [];

    /// <summary>The proof code in five groups, once it is closed out; empty before.</summary>
    public string Proof { get; init; } = "";

    /// <summary>Everyone who entered or signed something, by id, and by name where they signed.</summary>
    public ImmutableArray<string> People { get; init; } = [];

    /// <summary>The ids of the gauges that readings were taken with.</summary>
    public ImmutableArray<string> Gauges { get; init; } = [];

    /// <summary>The cutters named in remarks.</summary>
    public ImmutableArray<string> Cutters { get; init; } = [];

    /// <summary>Notes, remarks, the complaint and what is known of earlier work.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>Every judged or kept reading. Only a projection gives them; a job that was found comes without.</summary>
    public ImmutableArray<IndexedReading> Readings { get; init; } = [];

    /// <summary>What is looked in when a field is searched.</summary>
    internal IEnumerable<string> TextsOf(JobField field) =>
        field switch
        {
            JobField.Stamp => [Stamp],
            JobField.Customer => [Customer],
            JobField.Head => [Head],
            JobField.Part => Parts.SelectMany(p => (string[])[p.Number, p.Name]),
            JobField.Lot => Parts.Select(p => p.Lot),
            JobField.Gauge => Gauges,
            JobField.Cutter => Cutters,
            JobField.Person => People,
            JobField.Proof => [Proof],
            _ => Notes,
        };
}
