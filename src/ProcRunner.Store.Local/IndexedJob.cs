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
/// <param name="Values">The values that count now.</param>
public sealed record IndexedJob(
    string Id,
    string Stamp,
    string Customer,
    string State,
    string WaitingFor,
    DateTimeOffset Opened,
    DateTimeOffset LastActivity,
    string Person,
    ImmutableArray<IndexedPart> Parts,
    ImmutableArray<IndexedValue> Values
)
{
    /// <summary>The proof code in five groups, once it is closed out; empty before.</summary>
    public string Proof { get; init; } = "";
}
