using System.Globalization;
using ProcRunner.Problems;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace ProcRunner.Yaml.Trees;

/// <summary>
/// Text to a tree of nodes, from the parser's events: YAML's maps, lists and texts, and nothing else of it. Depth and count
/// are held while events come in, since the library's own document model overflows the stack on deep nesting.
/// </summary>
internal sealed class TreeReader
{
    private readonly string _text;
    private readonly ProblemLog _log;
    private readonly Scanner _scanner;
    private readonly Parser _parser;
    private int _nodes;

    private TreeReader(string text, ProblemLog log)
    {
        _text = text;
        _log = log;
        _scanner = new Scanner(new StringReader(text), skipComments: true);
        _parser = new Parser(_scanner);
    }

    /// <summary>The file's only document, or null with a problem; duplicate keys are reported and dropped.</summary>
    public static Node? Read(ReadOnlySpan<byte> bytes, ProblemLog log)
    {
        if (SourceText.Read(bytes, log) is not { } text)
        {
            return null;
        }

        TreeReader reader = new(text, log);
        try
        {
            return reader.Document();
        }
        catch (RefusedException refused)
        {
            log.Add(refused.Code, refused.At, refused.Message);
        }
        catch (YamlException error)
        {
            log.Add("PR-Y03", PlaceOf(log.File, error.Start), $"this can't be read as YAML: {Clause(error.Message)}");
        }
        catch (Exception error) when (error is ArgumentException or InvalidOperationException or FormatException)
        {
            // The library answers some broken texts so, with neither place nor words; where it stopped is near enough.
            Place stopped = PlaceOf(log.File, reader._scanner.CurrentPosition);
            log.Add(
                "PR-Y03",
                stopped,
                "this can't be read as YAML; look for a bracket, brace or quote that isn't closed before it"
            );
        }

        return null;
    }

    private Node? Document()
    {
        Next<StreamStart>();
        if (_parser.Accept<StreamEnd>(out _))
        {
            _log.Add("PR-Y03", new Place(_log.File, 0, 0), "the file is empty");
            return null;
        }

        Next<DocumentStart>();
        Node root = Read(depth: 0);
        Next<DocumentEnd>();
        if (_parser.Accept<DocumentStart>(out DocumentStart? second))
        {
            throw Refused(
                "PR-Y04",
                second.Start,
                "a second document begins here; a file holds one: delete the line with ---"
            );
        }

        Next<StreamEnd>();
        return root;
    }

    private Node Read(int depth)
    {
        ParsingEvent begun = Next<ParsingEvent>();
        if (++_nodes > FileLimits.Nodes)
        {
            throw Refused("PR-Y04", begun.Start, $"the file has more than {FileLimits.Nodes} entries; split it");
        }

        if (begun is NodeEvent node)
        {
            RefuseDecoration(node);
        }

        return begun switch
        {
            AnchorAlias alias => throw Refused(
                "PR-Y04",
                alias.Start,
                "an alias (*) isn't read here; write the text out, or put it in quotes if it begins with *"
            ),
            Scalar scalar => ReadScalar(scalar),
            SequenceStart list => ReadList(list, Deeper(depth, list)),
            MappingStart map => ReadMap(map, Deeper(depth, map)),
            _ => throw Refused("PR-Y03", begun.Start, "a text, a list or keys with values were expected here"),
        };
    }

    private Node.Scalar ReadScalar(Scalar scalar)
    {
        string text = scalar.Value;
        if (!SourceText.IsVisible(text))
        {
            throw Refused(
                "PR-Y03",
                scalar.Start,
                "this text holds a character that can't be seen; take its escape out"
            );
        }

        int quote = scalar.Style is ScalarStyle.SingleQuoted or ScalarStyle.DoubleQuoted ? 1 : 0;
        int start = (int)scalar.Start.Index + quote;
        bool verbatim =
            text.Length > 0
            && start <= _text.Length
            && _text.AsSpan(start).StartsWith(text)
            && !text.AsSpan().ContainsAny('\n', '\r');
        return new Node.Scalar(
            PlaceOf(_log.File, scalar.Start),
            text.ReplaceLineEndings(" ").Replace('\t', ' ').Trim(' '),
            verbatim && !text.StartsWith(' ') ? quote : null
        );
    }

    private Node.List ReadList(SequenceStart start, int depth)
    {
        List<Node> items = [];
        while (!_parser.Accept<SequenceEnd>(out _))
        {
            items.Add(Read(depth));
        }

        Next<SequenceEnd>();
        return new Node.List(PlaceOf(_log.File, start.Start), items);
    }

    private Node.Map ReadMap(MappingStart start, int depth)
    {
        List<Node.MapEntry> entries = [];
        Dictionary<string, Place> seen = new(StringComparer.Ordinal);
        while (!_parser.Accept<MappingEnd>(out _))
        {
            Node key = Read(depth);
            if (key is not Node.Scalar name)
            {
                throw new RefusedException("PR-Y03", key.Place, $"a key is a text; here stands {key.Shape}");
            }

            Node value = Read(depth);
            if (seen.TryAdd(name.Text, name.Place))
            {
                entries.Add(new Node.MapEntry(name, value));
            }
            else
            {
                _log.Add(
                    "PR-Y05",
                    name.Place,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{Quoting.Of(name.Text)} stands here again, first in line {seen[name.Text].Line}; keep one of them"
                    )
                );
            }
        }

        Next<MappingEnd>();
        return new Node.Map(PlaceOf(_log.File, start.Start), entries);
    }

    private int Deeper(int depth, NodeEvent at) =>
        depth < FileLimits.Depth
            ? depth + 1
            : throw Refused(
                "PR-Y04",
                at.Start,
                $"more than {FileLimits.Depth} lists and maps are inside each other here"
            );

    private void RefuseDecoration(NodeEvent node)
    {
        if (!node.Anchor.IsEmpty)
        {
            throw Refused(
                "PR-Y04",
                node.Start,
                "an anchor (&) isn't read here; put the text in quotes if it begins with &"
            );
        }

        if (!node.Tag.IsEmpty)
        {
            throw Refused(
                "PR-Y04",
                node.Start,
                "a tag (!) isn't read here; put the text in quotes if it begins with !"
            );
        }
    }

    private T Next<T>()
        where T : ParsingEvent
    {
        if (_parser.Current is null && !_parser.MoveNext())
        {
            throw new InvalidOperationException("The parser has no more events.");
        }

        if (_parser.Current is not T found)
        {
            throw Refused("PR-Y03", _parser.Current!.Start, "this is out of place");
        }

        _parser.MoveNext();
        return found;
    }

    private RefusedException Refused(string code, Mark at, string text) => new(code, PlaceOf(_log.File, at), text);

    private static Place PlaceOf(string file, Mark mark) => new(file, (int)mark.Line, (int)mark.Column);

    // The library's messages end with a full stop and may quote the file; a long one says nothing more.
    private static string Clause(string message) => Quoting.Shorten(message.TrimEnd('.', ' '), 160);

    /// <summary>Leaves the reading at once; the tree is of no use after one of these.</summary>
    private sealed class RefusedException(string code, Place at, string text) : Exception(text)
    {
        public string Code { get; } = code;

        public Place At { get; } = at;
    }
}
