using ProcRunner.Problems;

namespace ProcRunner.Yaml.Trees;

/// <summary>A part of a file as it stands there, before anyone asks what it means.</summary>
/// <param name="Place">Where it begins.</param>
internal abstract record Node(Place Place)
{
    /// <summary>What it is, in the words of a message.</summary>
    public abstract string Shape { get; }

    /// <summary>A text or number.</summary>
    /// <param name="Place">Where it begins.</param>
    /// <param name="Text">What it says, quotes and escapes taken off.</param>
    /// <param name="Verbatim">Columns from its beginning to its text when the file holds the text letter by letter on one line; else null.</param>
    public sealed record Scalar(Place Place, string Text, int? Verbatim) : Node(Place)
    {
        public override string Shape => Text.Length == 0 ? "nothing" : "a text";

        /// <summary>Where a character of the text stands; the beginning where that can't be told.</summary>
        public Place At(int position) =>
            Verbatim is { } offset ? Place with { Column = Place.Column + offset + position } : Place;
    }

    /// <summary>A list.</summary>
    public sealed record List(Place Place, IReadOnlyList<Node> Items) : Node(Place)
    {
        public override string Shape => "a list";
    }

    /// <summary>Keys with their values.</summary>
    public sealed record Map(Place Place, IReadOnlyList<MapEntry> Entries) : Node(Place)
    {
        public override string Shape => "keys with values";

        public Node? Find(string key) => Entries.FirstOrDefault(entry => entry.Key.Text == key)?.Value;
    }

    /// <summary>A key and its value.</summary>
    public sealed record MapEntry(Scalar Key, Node Value);
}
