using System.Globalization;

namespace ProcRunner.Trail;

/// <summary>Whether a trail holds, or the first entry that doesn't.</summary>
public abstract record TrailVerdict
{
    private TrailVerdict() { }

    /// <summary>The verdict in plain words, for a person.</summary>
    public abstract string InWords();

    /// <summary>Every entry holds.</summary>
    /// <param name="Entries">How many there are.</param>
    /// <param name="Last">The digest of the last.</param>
    public sealed record Holds(long Entries, Digest Last) : TrailVerdict
    {
        /// <inheritdoc/>
        public override string InWords() =>
            string.Create(
                CultureInfo.InvariantCulture,
                $"The trail holds: {Entries} {(Entries == 1 ? "entry" : "entries")}, last digest {Last}."
            );
    }

    /// <summary>An entry doesn't hold.</summary>
    /// <param name="Entry">The number that the first entry that doesn't hold should have.</param>
    /// <param name="Fault">What is wrong with it.</param>
    /// <param name="Offset">Where its line starts, in bytes; everything before holds.</param>
    public sealed record Broken(long Entry, TrailFault Fault, long Offset) : TrailVerdict
    {
        /// <inheritdoc/>
        public override string InWords()
        {
            string entry = Entry.ToString(CultureInfo.InvariantCulture);
            string before = (Entry - 1).ToString(CultureInfo.InvariantCulture);
            return Fault switch
            {
                TrailFault.Empty => "The trail is empty: not one entry is left.",
                TrailFault.TornTail =>
                    $"Entry {entry}, the last line, isn't whole: it was cut off while it was written, or altered. The entries before it hold.",
                TrailFault.NotAnEntry =>
                    $"Entry {entry} isn't an entry: the line isn't text, tab, digest. It was altered.",
                TrailFault.TooLong => $"Entry {entry} isn't an entry: the line is too long. It was altered.",
                TrailFault.NotUtf8 => $"Entry {entry} isn't text (UTF-8). It was altered.",
                TrailFault.Changed => $"Entry {entry} was changed after it was written: its digest is another's.",
                TrailFault.NotCanonical =>
                    $"Entry {entry} wasn't written by this program: its text isn't in the one agreed form.",
                TrailFault.UnknownVersion => $"Entry {entry} is of a version that this program doesn't know.",
                TrailFault.WrongShape =>
                    $"Entry {entry} wasn't written by this program: a part is missing, unknown or wrong.",
                TrailFault.AnotherTrail =>
                    $"Entry {entry} belongs to another trail: the file was swapped, or a line put in.",
                TrailFault.Missing => $"Entry {entry} is missing: a later one stands in its place.",
                TrailFault.OutOfOrder =>
                    $"Entry {entry} isn't where it belongs: an earlier one stands there again, or lines were moved.",
                TrailFault.AfterCloseOut => $"Entry {entry} stands after the entry that closed the job out.",
                _ => $"Entry {entry} doesn't follow from entry {before}: entry {before} was replaced.",
            };
        }
    }
}
