using System.Globalization;

namespace ProcRunner.Endurance;

/// <summary>What came of the rounds.</summary>
internal sealed class KillTally
{
    public int Rounds { get; set; }

    public int BeforeFirstPrompt { get; set; }

    public int Acknowledged { get; set; }

    /// <summary>Rounds in which an entry was on disk that the output hadn't acknowledged yet.</summary>
    public int AheadOfOutput { get; set; }

    /// <summary>Rounds that left a last line that wasn't whole.</summary>
    public int TornTails { get; set; }

    /// <summary>Starts that found the shop book behind a trail and brought it up to it.</summary>
    public int BookBehind { get; set; }

    public int Released { get; set; }

    /// <inheritdoc/>
    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"""
            {Rounds} rounds, each ended by kill -9 or by the release of the head
            {BeforeFirstPrompt} killed before the first prompt
            {Acknowledged} entries acknowledged, every one in the trail as in an undisturbed run
            {AheadOfOutput} kills between an entry's flush and its acknowledgement
            {TornTails} kills that left a last line that wasn't whole
            {BookBehind} starts that brought the shop book up to a trail
            {Released} heads released, each with the trail of an undisturbed run
            """
        );
}
