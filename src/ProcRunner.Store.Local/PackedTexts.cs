using System.Runtime.InteropServices;

namespace ProcRunner.Store.Local;

/// <summary>
/// Many short texts one after the other, so that all of them are searched in one sweep through memory rather than one by one.
/// </summary>
internal sealed class PackedTexts
{
    private const char End = '\n';
    private readonly List<int> _starts = [];
    private char[] _chars = new char[1024];
    private int _length;

    /// <summary>How many texts there are.</summary>
    public int Count => _starts.Count;

    /// <summary>A text by its number, from 0.</summary>
    public ReadOnlySpan<char> this[int number] =>
        _chars.AsSpan(_starts[number]..((number + 1 < _starts.Count ? _starts[number + 1] : _length) - 1));

    /// <summary>Adds a text; its number is how many there were before.</summary>
    public void Add(ReadOnlySpan<char> text)
    {
        int needed = _length + text.Length + 1;
        if (needed > _chars.Length)
        {
            Array.Resize(ref _chars, Math.Max(needed, _chars.Length * 2));
        }

        _starts.Add(_length);
        text.CopyTo(_chars.AsSpan(_length));
        _length = needed;
        _chars[_length - 1] = End;
    }

    /// <summary>Tells of each text that holds another one: its number, and where in it that begins first.</summary>
    public void Holding(string wanted, Action<int, int> tell)
    {
        ReadOnlySpan<char> all = _chars.AsSpan(0, _length);
        ReadOnlySpan<int> starts = CollectionsMarshal.AsSpan(_starts);
        int number = 0;
        for (
            int from = 0;
            wanted.Length > 0 && from < all.Length;
            from = number < starts.Length ? starts[number] : all.Length
        )
        {
            int at = all[from..].IndexOf(wanted, StringComparison.Ordinal);
            if (at < 0)
            {
                return;
            }

            number = NumberAt(starts, from + at, number);
            tell(number, from + at - starts[number]);
            number++;
        }
    }

    // Where every text holds it, the next one is a step away; where few do, the steps double.
    private static int NumberAt(ReadOnlySpan<int> starts, int place, int first)
    {
        int step = 1;
        while (first + step < starts.Length && starts[first + step] <= place)
        {
            first += step;
            step *= 2;
        }

        int found = starts[first..Math.Min(starts.Length, first + step)].BinarySearch(place);
        return first + (found >= 0 ? found : ~found - 1);
    }
}
