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

    /// <summary>Each text that holds another one, in the order of their numbers. No text may be added meanwhile.</summary>
    public Sweep Holding(string wanted) =>
        new(_chars.AsSpan(0, _length), CollectionsMarshal.AsSpan(_starts), wanted.AsSpan());

    /// <summary>A walk over the texts that hold another one.</summary>
    public ref struct Sweep
    {
        private readonly ReadOnlySpan<char> _all;
        private readonly ReadOnlySpan<int> _starts;
        private readonly ReadOnlySpan<char> _wanted;
        private int _from;

        internal Sweep(ReadOnlySpan<char> all, ReadOnlySpan<int> starts, ReadOnlySpan<char> wanted)
        {
            _all = all;
            _starts = starts;
            _wanted = wanted;
            _from = wanted.Length == 0 ? all.Length : 0;
        }

        /// <summary>The text's number.</summary>
        public int Number { get; private set; }

        /// <summary>Where in the text it begins first.</summary>
        public int At { get; private set; }

        /// <summary>True when the text is nothing else.</summary>
        public readonly bool IsWhole => _from == _starts[Number] + _wanted.Length + 1;

        /// <summary>True when a word of the text begins there.</summary>
        public readonly bool BeginsWord => At == 0 || !char.IsLetterOrDigit(_all[_starts[Number] + At - 1]);

        /// <summary>On to the next one; false when there is none.</summary>
        public bool MoveNext()
        {
            ReadOnlySpan<char> rest = _from < _all.Length ? _all[_from..] : [];
            int at = _wanted.Length == 1 ? rest.IndexOf(_wanted[0]) : rest.IndexOf(_wanted);
            if (at < 0)
            {
                return false;
            }

            int place = _from + at;
            Number = NumberAt(place, Number);
            At = place - _starts[Number];
            _from = Number + 1 < _starts.Length ? _starts[Number + 1] : _all.Length;
            return true;
        }

        // Where every text holds it, the next one is a step away; where few do, the steps double.
        private readonly int NumberAt(int place, int first)
        {
            for (int near = first; near < first + 3; near++)
            {
                if (near + 1 >= _starts.Length || place < _starts[near + 1])
                {
                    return near;
                }
            }

            int step = 4;
            while (first + step < _starts.Length && _starts[first + step] <= place)
            {
                first += step;
                step *= 2;
            }

            int found = _starts[first..Math.Min(_starts.Length, first + step)].BinarySearch(place);
            return first + (found >= 0 ? found : ~found - 1);
        }
    }
}
