using System.Collections.Immutable;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>
/// One search: which jobs fit, and how well. First every job gets a rank, from the texts in which what is looked for stands;
/// where it stands is worked out afterwards, for the few that are shown.
/// </summary>
/// <remarks>
/// The fields are swept from the one that counts most to the one that counts least, and one that can change no job's rank any
/// more is left out: what stands in every part's name isn't looked for in a hundred thousand notes. Each further word is
/// looked for only where the words before were found; where those are few, their jobs are read rather than all texts swept.
/// </remarks>
/// <param name="texts">The texts of each field.</param>
/// <param name="folded">The stamps as they are told apart on greasy iron, by the number of their text.</param>
/// <param name="jobs">The jobs by their places.</param>
internal sealed class JobSearch(TextPlaces[] texts, PackedTexts folded, IReadOnlyList<IndexedJob?> jobs)
{
    // Reading a job's texts one by one takes about as long as sweeping over so many of them.
    private const int SweptForOneRead = 16;

    private const byte NothingWanted = 1;

    private static readonly ImmutableArray<JobField> Everywhere = [.. Enum.GetValues<JobField>()];
    private static readonly ImmutableArray<JobField> BestFirst =
    [
        .. Everywhere.OrderByDescending(FieldRank.Best).ThenBy(field => field),
    ];

    private ImmutableArray<Term> _terms = [];

    /// <summary>Of the jobs that come into question, how well each fits; 1 where nothing was looked for.</summary>
    /// <param name="query">What is looked for.</param>
    /// <param name="there">The jobs there are: 1, or 0 where one is gone.</param>
    /// <param name="fits">Of them, 1 for those of the days that were asked for; then how well each fits.</param>
    public void Rank(JobQuery query, JobRanks there, JobRanks fits)
    {
        Term[] fields = [.. query.In.Select(i => new Term([i.Field], Wanted(i.Text)))];
        string text = query.Text.Trim();
        if (text.Length == 0)
        {
            Narrow([], fields, fits);
            return;
        }

        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        Term whole = new(Everywhere, Wanted(text));
        using JobRanks asWhole = Collect(whole, there);
        if (words.Length == 1 || asWhole.FitsAnyOf(there))
        {
            fits.KeepBoth(asWhole);
            Narrow([whole], fields, fits);
        }
        else
        {
            Narrow([], [.. words.Select(word => new Term(Everywhere, Wanted(word))), .. fields], fits);
        }
    }

    /// <summary>Where a job that fits has what was looked for, and what stands there.</summary>
    /// <param name="job">The job.</param>
    /// <param name="rank">The rank it got.</param>
    public JobHit Hit(IndexedJob job, byte rank)
    {
        foreach (Term term in _terms)
        {
            foreach (JobField field in term.Fields.Where(field => FieldRank.IsOf(field, rank)))
            {
                foreach (string text in job.TextsOf(field))
                {
                    if (FieldRank.Of(field, text, term.Wanted) == rank)
                    {
                        return new(job, rank, field, InWords(job, field, text));
                    }
                }
            }
        }

        return new(job, rank == NothingWanted ? 0 : rank, null, "");
    }

    // The longest first: likely the rarest, and the fewer fit, the less is left to look at.
    private void Narrow(Term[] known, Term[] further, JobRanks fits)
    {
        _terms = [.. known, .. further];
        foreach (Term term in further.OrderByDescending(t => t.Wanted.Length))
        {
            using JobRanks ranks = Collect(term, fits);
            fits.KeepBoth(ranks);
        }
    }

    private JobRanks Collect(Term term, JobRanks soFar)
    {
        JobRanks ranks = new(jobs.Count);
        foreach (JobField field in term.Fields.Length == 1 ? term.Fields : BestFirst)
        {
            TextPlaces there = texts[(int)field];
            byte best = FieldRank.Best(field, there.IsThere(term.Wanted));
            int open = ranks.OpenBelow(soFar, best);
            if (open == 0 || !FieldRank.IsWorthLooking(field, term.Wanted))
            {
                continue;
            }

            if ((long)open * SweptForOneRead < there.Texts.Count)
            {
                Read(term.Wanted, field, best, soFar, ranks);
            }
            else if (field == JobField.Stamp)
            {
                SweepStamps(term.Wanted, ranks);
            }
            else
            {
                Sweep(term.Wanted, there, FieldRank.Best(field), ranks);
            }
        }

        return ranks;
    }

    private void Read(string wanted, JobField field, byte best, JobRanks soFar, JobRanks ranks)
    {
        for (int place = 0; place < jobs.Count; place++)
        {
            if (ranks.IsOpenBelow(soFar, place, best) && jobs[place] is { } job)
            {
                foreach (string text in job.TextsOf(field))
                {
                    ranks.Raise(place, FieldRank.Of(field, text, wanted));
                }
            }
        }
    }

    private static void Sweep(string wanted, TextPlaces there, byte best, JobRanks ranks)
    {
        PackedTexts.Sweep sweep = there.Texts.Holding(wanted);
        while (sweep.MoveNext())
        {
            there.Raise(sweep.Number, FieldRank.OfPart(best, sweep.IsWhole, sweep.BeginsWord), ranks);
        }
    }

    private void SweepStamps(string wanted, JobRanks ranks)
    {
        TextPlaces stamps = texts[(int)JobField.Stamp];
        PackedTexts.Sweep holding = stamps.Texts.Holding(wanted);
        while (holding.MoveNext())
        {
            byte rank = StampLikeness.OfPart(stamps.Texts[holding.Number], wanted, holding.At);
            stamps.Raise(holding.Number, rank, ranks);
        }

        string like = StampLikeness.Fold(wanted);
        if (like.Length >= StampLikeness.ShortestPart)
        {
            PackedTexts.Sweep alike = folded.Holding(like);
            while (alike.MoveNext())
            {
                ReadOnlySpan<char> stamp = stamps.Texts[alike.Number];
                byte rank = StampLikeness.OfFolded(stamp, folded[alike.Number], wanted, like);
                stamps.Raise(alike.Number, rank, ranks);
            }
        }

        for (int number = 0; like.Length >= StampLikeness.ShortestForOneOff && number < folded.Count; number++)
        {
            if (StampLikeness.IsOneOff(folded[number], like))
            {
                stamps.Raise(number, StampLikeness.OneOff, ranks);
            }
        }
    }

    private static string Wanted(string text) =>
        (ProofCode.TryRead(text.Trim(), out _)?.ToString() ?? text.Trim()).ToUpperInvariant();

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

    private readonly record struct Term(ImmutableArray<JobField> Fields, string Wanted);
}
