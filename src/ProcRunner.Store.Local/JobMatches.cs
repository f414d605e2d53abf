namespace ProcRunner.Store.Local;

/// <summary>The jobs that fit, by their place in the catalogue; of several matches of a job the best.</summary>
/// <param name="size">How many places there are.</param>
internal sealed class JobMatches(int size)
{
    private readonly JobMatch[] _best = new JobMatch[size];
    private readonly List<int> _places = [];

    /// <summary>The places of the jobs that fit.</summary>
    public List<int> Places => _places;

    /// <summary>The best match at a place; its rank is 0 where there is none.</summary>
    public JobMatch this[int place] => _best[place];

    /// <summary>True when a stamp is exactly what is looked for.</summary>
    public bool HasItself { get; private set; }

    /// <summary>Jobs fit.</summary>
    public void Add(List<int> places, JobMatch match)
    {
        foreach (int place in places)
        {
            Add(place, match);
        }
    }

    /// <summary>A job fits.</summary>
    public void Add(int place, JobMatch match)
    {
        int before = _best[place].Rank;
        if (before == 0)
        {
            _places.Add(place);
        }

        if (match.Rank > before)
        {
            _best[place] = match;
            HasItself |= match.Rank == StampLikeness.Same;
        }
    }

    /// <summary>Those that fit both.</summary>
    public JobMatches And(JobMatches other)
    {
        JobMatches both = new(_best.Length);
        foreach (int place in _places)
        {
            if (other[place].Rank > 0)
            {
                both.Add(place, _best[place].Rank >= other[place].Rank ? _best[place] : other[place]);
            }
        }

        return both;
    }
}
