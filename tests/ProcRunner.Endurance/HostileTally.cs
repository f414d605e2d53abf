using System.Globalization;

namespace ProcRunner.Endurance;

/// <summary>What hostile inputs came to.</summary>
/// <param name="Decided">Commands given to decide, and how many it took.</param>
/// <param name="Lines">Lines typed into line mode.</param>
/// <param name="Loaded">Procedures and head specs, and how many had no problem.</param>
/// <param name="Imported">Exported jobs, and how many still held.</param>
/// <param name="Slowest">The slowest single input and what it was.</param>
internal sealed record HostileTally(
    (int All, int Taken) Decided,
    int Lines,
    (int All, int Taken) Loaded,
    (int All, int Taken) Imported,
    (TimeSpan Took, string What) Slowest
)
{
    public int All => Decided.All + Lines + Loaded.All + Imported.All;

    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{All} inputs: {Decided.All} commands ({Decided.Taken} taken), {Lines} lines, {Loaded.All} files of YAML ({Loaded.Taken} without a problem), {Imported.All} exported jobs ({Imported.Taken} still held); no crash, no hang, no escape byte, no file outside. The slowest took {Slowest.Took.TotalMilliseconds:0} ms: {Slowest.What}"
        );
}
