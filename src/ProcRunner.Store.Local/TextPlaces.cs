namespace ProcRunner.Store.Local;

/// <summary>The different texts of one field of all jobs, in capitals, and the places of the jobs that each stands in.</summary>
internal sealed class TextPlaces
{
    private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);

    // Most texts stand in one job only: a list for each of them would take more room than the texts.
    private readonly List<int> _first = [];
    private readonly Dictionary<int, List<int>> _more = [];

    /// <summary>The texts.</summary>
    public PackedTexts Texts { get; } = new();

    /// <summary>A text stands in a job; true when it stood in none before.</summary>
    public bool Add(string text, int place)
    {
        string capitals = text.ToUpperInvariant();
        if (_numbers.TryAdd(capitals, Texts.Count))
        {
            Texts.Add(capitals);
            _first.Add(place);
            return true;
        }

        int number = _numbers[capitals];
        if (!_more.TryGetValue(number, out List<int>? more))
        {
            if (_first[number] == place)
            {
                return false;
            }

            more = [];
            _more.Add(number, more);
        }

        if (more.Count == 0 || more[^1] != place)
        {
            more.Add(place);
        }

        return false;
    }

    /// <summary>The jobs in which a text stands fit as well as this.</summary>
    /// <param name="number">The text's number.</param>
    /// <param name="rank">How well.</param>
    /// <param name="ranks">Told of each.</param>
    public void Raise(int number, byte rank, JobRanks ranks)
    {
        ranks.Raise(_first[number], rank);
        if (_more.TryGetValue(number, out List<int>? more))
        {
            foreach (int place in more)
            {
                ranks.Raise(place, rank);
            }
        }
    }

    /// <summary>The places of exactly this text, whatever the case.</summary>
    public IEnumerable<int> Of(string text) =>
        _numbers.TryGetValue(text.ToUpperInvariant(), out int number)
            ? [_first[number], .. _more.GetValueOrDefault(number) ?? []]
            : [];
}
