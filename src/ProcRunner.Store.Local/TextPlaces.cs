namespace ProcRunner.Store.Local;

/// <summary>The different texts of one field of all jobs, in capitals, and the places of the jobs that each stands in.</summary>
internal sealed class TextPlaces
{
    private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);
    private readonly List<List<int>> _places = [];

    /// <summary>The texts.</summary>
    public PackedTexts Texts { get; } = new();

    /// <summary>The places of a text by its number.</summary>
    public List<int> this[int number] => _places[number];

    /// <summary>A text stands in a job; true when it stood in none before.</summary>
    public bool Add(string text, int place)
    {
        string capitals = text.ToUpperInvariant();
        bool isNew = !_numbers.TryGetValue(capitals, out int number);
        if (isNew)
        {
            number = Texts.Count;
            _numbers.Add(capitals, number);
            Texts.Add(capitals);
            _places.Add(new(1));
        }

        List<int> places = _places[number];
        if (places.Count == 0 || places[^1] != place)
        {
            places.Add(place);
        }

        return isNew;
    }

    /// <summary>The places of exactly this text, whatever the case.</summary>
    public IReadOnlyList<int> Of(string text) =>
        _numbers.TryGetValue(text.ToUpperInvariant(), out int number) ? _places[number] : [];
}
