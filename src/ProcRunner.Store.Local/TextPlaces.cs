using System.Runtime.InteropServices;

namespace ProcRunner.Store.Local;

/// <summary>The different texts of one field of all jobs, in capitals, and the places of the jobs that each stands in.</summary>
/// <remarks>
/// The places of one text lie side by side: a list for each text would lie anywhere in memory, and going there takes longer
/// than all else of a search. What was added since they were last put together hangs on behind, the latest first.
/// </remarks>
internal sealed class TextPlaces
{
    private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);
    private readonly List<int> _latest = [];
    private readonly List<(int Place, int Before)> _since = [];
    private int[] _places = [];

    // Where the places of each text begin and, one further on, end.
    private int[] _starts = [0];

    /// <summary>The texts.</summary>
    public PackedTexts Texts { get; } = new();

    /// <summary>True for a text, in capitals, that is one of them.</summary>
    public bool IsThere(string capitals) => _numbers.ContainsKey(capitals);

    /// <summary>A text stands in a job; true when it stood in none before.</summary>
    public bool Add(string text, int place)
    {
        string capitals = text.ToUpperInvariant();
        bool isNew = _numbers.TryAdd(capitals, Texts.Count);
        if (isNew)
        {
            Texts.Add(capitals);
            _latest.Add(-1);
        }

        ref int latest = ref CollectionsMarshal.AsSpan(_latest)[_numbers[capitals]];
        if (latest < 0 || _since[latest].Place != place)
        {
            _since.Add((place, latest));
            latest = _since.Count - 1;
        }

        return isNew;
    }

    /// <summary>Puts the places of each text side by side, once enough were added to be worth it.</summary>
    public void PutTogether()
    {
        if (_since.Count <= _places.Length / 4)
        {
            return;
        }

        int[] starts = new int[Texts.Count + 1];
        int[] places = new int[_places.Length + _since.Count];
        int at = 0;
        for (int number = 0; number < Texts.Count; number++)
        {
            ReadOnlySpan<int> known = Together(number);
            known.CopyTo(places.AsSpan(at));
            at += known.Length;
            for (int since = _latest[number]; since >= 0; since = _since[since].Before)
            {
                places[at++] = _since[since].Place;
            }

            starts[number + 1] = at;
        }

        (_starts, _places) = (starts, places);
        CollectionsMarshal.AsSpan(_latest).Fill(-1);
        _since.Clear();
        _since.TrimExcess();
    }

    /// <summary>The jobs in which a text stands fit as well as this.</summary>
    /// <param name="number">The text's number.</param>
    /// <param name="rank">How well.</param>
    /// <param name="ranks">Told of each.</param>
    public void Raise(int number, byte rank, JobRanks ranks)
    {
        foreach (int place in Together(number))
        {
            ranks.Raise(place, rank);
        }

        if (_since.Count == 0)
        {
            return;
        }

        for (int since = _latest[number]; since >= 0; since = _since[since].Before)
        {
            ranks.Raise(_since[since].Place, rank);
        }
    }

    /// <summary>The places of exactly this text, whatever the case; in no order.</summary>
    public IEnumerable<int> Of(string text)
    {
        if (!_numbers.TryGetValue(text.ToUpperInvariant(), out int number))
        {
            return [];
        }

        List<int> places = [.. Together(number)];
        for (int since = _latest[number]; since >= 0; since = _since[since].Before)
        {
            places.Add(_since[since].Place);
        }

        return places;
    }

    private ReadOnlySpan<int> Together(int number) =>
        number + 1 < _starts.Length ? _places.AsSpan(_starts[number].._starts[number + 1]) : [];
}
