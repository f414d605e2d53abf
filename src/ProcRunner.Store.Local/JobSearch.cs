using System.Collections.Immutable;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>
/// One search: which jobs fit, and how well. First every job gets a rank, from the texts in which what is looked for stands;
/// where it stands is worked out afterwards, for the few that are shown.
/// </summary>
/// <param name="texts">The texts of each field.</param>
/// <param name="folded">The stamps as they are told apart on greasy iron, by the number of their text.</param>
/// <param name="places">How many places there are in the catalogue.</param>
internal sealed class JobSearch(TextPlaces[] texts, PackedTexts folded, int places)
{
    private static readonly ImmutableArray<JobField> Everywhere = [.. Enum.GetValues<JobField>()];
    private readonly List<(ImmutableArray<JobField> Fields, string Wanted)> _terms = [];

    /// <summary>How well each job fits; null when nothing but days was asked for, and every job does.</summary>
    public JobRanks? Rank(JobQuery query)
    {
        JobRanks? ranks = query.Text.Trim() is { Length: > 0 } text ? Anywhere(text) : null;
        foreach ((JobField field, string wanted) in query.In)
        {
            ranks = Also(ranks, Collect([field], wanted.Trim()));
        }

        return ranks;
    }

    /// <summary>Where a job that fits has what was looked for, and what stands there.</summary>
    /// <param name="job">The job.</param>
    /// <param name="rank">The rank it got.</param>
    public JobHit Hit(IndexedJob job, byte rank)
    {
        foreach ((ImmutableArray<JobField> fields, string wanted) in _terms)
        {
            foreach (JobField field in fields)
            {
                foreach (string text in job.TextsOf(field))
                {
                    if (FieldRank.Of(field, text, wanted) == rank)
                    {
                        return new(job, rank, field, InWords(job, field, text));
                    }
                }
            }
        }

        return new(job, rank, null, "");
    }

    private JobRanks Anywhere(string text)
    {
        JobRanks whole = Collect(Everywhere, text);
        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length == 1 || whole.Any)
        {
            return whole;
        }

        whole.Dispose();
        _terms.Clear();
        JobRanks? each = null;
        foreach (string word in words)
        {
            each = Also(each, Collect(Everywhere, word));
        }

        return each!;
    }

    private static JobRanks Also(JobRanks? ranks, JobRanks more)
    {
        if (ranks is null)
        {
            return more;
        }

        using (more)
        {
            ranks.KeepBoth(more);
        }

        return ranks;
    }

    private JobRanks Collect(ImmutableArray<JobField> fields, string text)
    {
        string wanted = (ProofCode.TryRead(text, out _)?.ToString() ?? text).ToUpperInvariant();
        _terms.Add((fields, wanted));
        JobRanks ranks = new(places);
        foreach (JobField field in fields)
        {
            if (field == JobField.Stamp)
            {
                CollectStamps(ranks, wanted);
            }
            else
            {
                TextPlaces there = texts[(int)field];
                there.Texts.Holding(
                    wanted,
                    (number, at) =>
                        there.Raise(number, FieldRank.OfPart(field, there.Texts[number], wanted.Length, at), ranks)
                );
            }
        }

        return ranks;
    }

    private void CollectStamps(JobRanks ranks, string wanted)
    {
        TextPlaces stamps = texts[(int)JobField.Stamp];
        stamps.Texts.Holding(
            wanted,
            (number, at) => stamps.Raise(number, StampLikeness.OfPart(stamps.Texts[number], wanted, at), ranks)
        );
        string like = StampLikeness.Fold(wanted);
        if (like.Length >= StampLikeness.ShortestPart)
        {
            folded.Holding(
                like,
                (number, _) =>
                    stamps.Raise(
                        number,
                        StampLikeness.OfFolded(stamps.Texts[number], folded[number], wanted, like),
                        ranks
                    )
            );
        }

        for (int number = 0; like.Length >= StampLikeness.ShortestForOneOff && number < folded.Count; number++)
        {
            if (StampLikeness.IsOneOff(folded[number], like))
            {
                stamps.Raise(number, StampLikeness.OneOff, ranks);
            }
        }
    }

    private static string InWords(IndexedJob job, JobField field, string text)
    {
        IndexedPart? part = field switch
        {
            JobField.Part => job.Parts.FirstOrDefault(p => p.Number == text || p.Name == text),
            JobField.Lot => job.Parts.FirstOrDefault(p => p.Lot == text),
            _ => null,
        };
        return part is null ? text : $"{part.Name} {part.Number}, lot {part.Lot}, {part.Position}";
    }
}
