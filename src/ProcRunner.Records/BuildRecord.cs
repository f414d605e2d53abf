using ProcRunner.Procedures;
using ProcRunner.Records.History;
using ProcRunner.Records.Story;
using ProcRunner.Runs;

namespace ProcRunner.Records;

/// <summary>
/// What was built: everything that the customer gets and a comeback asks for, taken from the trail. Pure: the same trail
/// and shop book give the same record. Every number in it stands in the trail or in the texts the job pins, or is
/// a <see cref="Reckoning"/> that shows its working.
/// </summary>
public sealed record BuildRecord
{
    /// <summary>The plan the job was worked to.</summary>
    public required Plan Plan { get; init; }

    /// <summary>What the job is.</summary>
    public required JobHeader Job { get; init; }

    /// <summary>The job's id in the store.</summary>
    public required string JobId { get; init; }

    /// <summary>The shop's name.</summary>
    public required string Shop { get; init; }

    /// <summary>Where the shop is found and called, as it was set at the last entry; empty when it wasn't.</summary>
    public required string Contact { get; init; }

    /// <summary>True for the demo shop, whose sign-offs prove nothing.</summary>
    public required bool IsDemo { get; init; }

    /// <summary>Where the job stands.</summary>
    public required JobStanding Standing { get; init; }

    /// <summary>Why it is held or scrapped; empty otherwise.</summary>
    public required string StandingReason { get; init; }

    /// <summary>The first entry.</summary>
    public required Stamped Opened { get; init; }

    /// <summary>The last entry.</summary>
    public required Stamped Last { get; init; }

    /// <summary>How it can be proved.</summary>
    public required Proof Proof { get; init; }

    /// <summary>The stages that were worked in, in the procedure's order.</summary>
    public required IReadOnlyList<StageTold> Stages { get; init; }

    /// <summary>Every value: those of the head, then position by position.</summary>
    public required IReadOnlyList<FinalValue> Values { get; init; }

    /// <summary>The last finding of every inspection.</summary>
    public required IReadOnlyList<Said> Findings { get; init; }

    /// <summary>What was decided.</summary>
    public required IReadOnlyList<Said> Decisions { get; init; }

    /// <summary>The parts fitted, with those that were replaced again.</summary>
    public required IReadOnlyList<PartTold> Parts { get; init; }

    /// <summary>Every cut from its zero to its end.</summary>
    public required IReadOnlyList<CutTold> Cuts { get; init; }

    /// <summary>What is left to work with.</summary>
    public required IReadOnlyList<Reckoning> Left { get; init; }

    /// <summary>The gauges that were read.</summary>
    public required IReadOnlyList<GaugeTold> Gauges { get; init; }

    /// <summary>What was said of pilots and cutters, and their changes.</summary>
    public required IReadOnlyList<Said> Tools { get; init; }

    /// <summary>Results out of spec, each from the first to how it was settled.</summary>
    public required IReadOnlyList<Case> Cases { get; init; }

    /// <summary>What stopped holding because something moved.</summary>
    public required IReadOnlyList<Renewal> Renewals { get; init; }

    /// <summary>Readings, findings and choices whose place a later one took.</summary>
    public required IReadOnlyList<Earlier> Earlier { get; init; }

    /// <summary>Entries that were corrected: what stood before and what stands now.</summary>
    public required IReadOnlyList<Correction> Corrections { get; init; }

    /// <summary>Entries that the program questioned.</summary>
    public required IReadOnlyList<Questioned> Questions { get; init; }

    /// <summary>Limits that nobody knew, chosen in the run.</summary>
    public required IReadOnlyList<LimitTold> ChosenLimits { get; init; }

    /// <summary>Steps that were left out, with why.</summary>
    public required IReadOnlyList<Said> LeftOut { get; init; }

    /// <summary>The earlier job that it came back from, the other heads of the engine, and how they go out.</summary>
    public required IReadOnlyList<Said> OtherHeads { get; init; }

    /// <summary>The earlier job's stamp, of a head that came back; empty for another.</summary>
    public required string EarlierStamp { get; init; }

    /// <summary>How the head went out from the earlier job and how it came back; null where that isn't known.</summary>
    public required Comeback? Comeback { get; init; }

    /// <summary>Notes.</summary>
    public required IReadOnlyList<Said> Notes { get; init; }

    /// <summary>Every mark: sign-offs, release, concessions, scrapping.</summary>
    public required IReadOnlyList<MarkTold> Marks { get; init; }

    /// <summary>Where the clock stood earlier than at the entry before, in words.</summary>
    public required IReadOnlyList<string> Clock { get; init; }

    /// <summary>What only the engine builder can close.</summary>
    public required IReadOnlyList<Advice> Advice { get; init; }

    /// <summary>True when nothing can follow any more.</summary>
    public bool IsClosed => Standing is JobStanding.Released or JobStanding.Scrapped;

    /// <summary>A job's standing as a word.</summary>
    public string StandingWord => WordOf(Standing);

    /// <summary>A standing as a word.</summary>
    public static string WordOf(JobStanding standing) =>
        standing switch
        {
            JobStanding.Held => "held",
            JobStanding.Released => "released",
            JobStanding.Scrapped => "scrapped",
            _ => "open",
        };

    /// <summary>The value of a characteristic at a position, or null.</summary>
    /// <param name="name">The characteristic.</param>
    /// <param name="position">The position's name, or "head".</param>
    public FinalValue? Find(string name, string position) =>
        Values.FirstOrDefault(v => v.Name == name && v.Position == position);

    /// <summary>The value that stands for something the record shows, or null.</summary>
    /// <param name="role">One of <see cref="RecordRoles"/>.</param>
    /// <param name="position">The position's name, or "head".</param>
    public FinalValue? Shown(string role, string position = "head") =>
        Plan.Procedure.ValueShownAs(role) is { } name ? Find(name, position) : null;

    /// <summary>Every value that stands for something the record shows.</summary>
    /// <param name="role">One of <see cref="RecordRoles"/>.</param>
    public IReadOnlyList<FinalValue> AllShown(string role) =>
        Plan.Procedure.ValueShownAs(role) is { } name ? [.. Values.Where(v => v.Name == name)] : [];

    /// <summary>Makes the record.</summary>
    public static BuildRecord From(RecordSource source) => new RecordMaker(source).Make();
}
