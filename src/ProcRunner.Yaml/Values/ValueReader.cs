using System.Buffers;
using System.Globalization;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Yaml.Trees;

namespace ProcRunner.Yaml.Values;

/// <summary>
/// Reads single values. Each method gives null for what it can't read and reports it; a null node was reported as missing
/// before, or may be missing, so it gives null in silence.
/// </summary>
internal sealed class ValueReader(ProblemLog log)
{
    private static readonly SearchValues<char> NameMarks = SearchValues.Create(" -'");

    private static readonly Dictionary<string, bool> YesOrNo = new(StringComparer.Ordinal)
    {
        ["yes"] = true,
        ["no"] = false,
    };

    /// <summary>Something written, at most 500 characters.</summary>
    public Node.Scalar? Scalar(Node? node, string what)
    {
        if (node is null)
        {
            return null;
        }

        if (node is not Node.Scalar scalar || scalar.Text.Length == 0)
        {
            log.Add("PR-Y08", node.Place, $"{what} is wanted here; here stands {node.Shape}");
            return null;
        }

        if (scalar.Text.Length > FileLimits.TextLength)
        {
            log.Add(
                "PR-Y13",
                node.Place,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"this text has {scalar.Text.Length} characters; at most {FileLimits.TextLength} fit: shorten it"
                )
            );
            return null;
        }

        return scalar;
    }

    public string? Text(Node? node) => Scalar(node, "a text")?.Text;

    /// <summary>A name: begins with a letter or digit, then letters, digits, single spaces, hyphens and apostrophes.</summary>
    public string? Name(Node? node)
    {
        if (Scalar(node, "a name") is not { } scalar)
        {
            return null;
        }

        if (IsName(scalar.Text))
        {
            return scalar.Text;
        }

        log.Add(
            "PR-Y11",
            scalar.Place,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{Quoting.Of(scalar.Text)} can't be a name: a name has at most {FileLimits.NameLength} characters, letters, digits, spaces, hyphens and apostrophes, and begins with a letter or digit"
            )
        );
        return null;
    }

    public static bool IsName(string text) =>
        text.Length is > 0 and <= FileLimits.NameLength
        && char.IsLetterOrDigit(text[0])
        && !text.EndsWith(' ')
        && !text.Contains("  ", StringComparison.Ordinal)
        && text.All(letter => char.IsLetterOrDigit(letter) || NameMarks.Contains(letter));

    public int? Whole(Node? node, int least, int most)
    {
        if (Scalar(node, "a whole number") is not { } scalar)
        {
            return null;
        }

        if (
            int.TryParse(scalar.Text, NumberStyles.None, CultureInfo.InvariantCulture, out int value)
            && value >= least
            && value <= most
        )
        {
            return value;
        }

        log.Add(
            "PR-Y10",
            scalar.Place,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{Quoting.Of(scalar.Text)} was read; a whole number from {least} to {most} is wanted"
            )
        );
        return null;
    }

    /// <summary>A day, as 2026-03-01.</summary>
    public DateOnly? Day(Node? node)
    {
        if (Scalar(node, "a day") is not { } scalar)
        {
            return null;
        }

        if (
            DateOnly.TryParseExact(
                scalar.Text,
                "yyyy-MM-dd",
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out DateOnly day
            )
        )
        {
            return day;
        }

        log.Add("PR-Y10", scalar.Place, $"{Quoting.Of(scalar.Text)} was read; a day is wanted, as 2026-03-01");
        return null;
    }

    /// <summary>When a file got its revision, and what changed with it.</summary>
    public Revised? Revised(Node? node)
    {
        if (Keys.Of(node, "when it was revised", ["on", "what"], log) is not { } keys)
        {
            return null;
        }

        DateOnly? on = Day(keys.Require("on"));
        string? what = Text(keys.Require("what"));
        return on is { } day && what is not null ? new Revised(day, what) : null;
    }

    public bool? YesNo(Node? node) => OneOf(node, YesOrNo);

    /// <summary>One of the words of a table.</summary>
    public T? OneOf<T>(Node? node, IReadOnlyDictionary<string, T> words)
        where T : struct
    {
        if (Scalar(node, Quoting.AnyOf([.. words.Keys])) is not { } scalar)
        {
            return null;
        }

        if (words.TryGetValue(scalar.Text, out T value))
        {
            return value;
        }

        log.Add(
            "PR-Y09",
            scalar.Place,
            $"{Quoting.Of(scalar.Text)} was read; {Quoting.AnyOf([.. words.Keys])} is wanted"
        );
        return null;
    }

    /// <summary>A quantity; a number alone is of the unit given, or a pure number without one.</summary>
    public Quantity? Quantity(Node? node, Unit? bare)
    {
        if (Scalar(node, "a number with its unit") is not { } scalar)
        {
            return null;
        }

        if (!Quantities.Quantity.TryParse(scalar.Text, out Quantity read))
        {
            log.Add("PR-Y10", scalar.Place, NotAQuantity(scalar.Text));
            return null;
        }

        bool alone = ReferenceEquals(read.Unit, Units.One);
        return alone && bare is not null ? new Quantity(read.Value, bare) : read;
    }

    /// <summary>A unit by its symbol.</summary>
    public Unit? UnitOf(Node? node)
    {
        if (Scalar(node, "a unit") is not { } scalar)
        {
            return null;
        }

        Unit? unit = Units.Find(scalar.Text);
        if (unit is null)
        {
            log.Add(
                "PR-Y09",
                scalar.Place,
                $"{Quoting.Of(scalar.Text)} is no unit that is known; {UnitHint(scalar.Text)}"
            );
        }

        return unit;
    }

    /// <summary>The items of a list; empty in silence for null.</summary>
    public IReadOnlyList<Node> List(Node? node, string what)
    {
        if (node is Node.List list)
        {
            return list.Items;
        }

        if (node is not null)
        {
            log.Add("PR-Y08", node.Place, $"a list of {what} is wanted here, [one, another]; here stands {node.Shape}");
        }

        return [];
    }

    /// <summary>A list of names, none twice.</summary>
    public IReadOnlyList<string> Names(Node? node, string what)
    {
        List<string> names = [];
        HashSet<string> seen = new(StringComparer.Ordinal);
        foreach (Node item in List(node, what))
        {
            if (Name(item) is not { } name)
            {
                continue;
            }

            if (!seen.Add(name))
            {
                log.Add("PR-P02", item.Place, $"{Quoting.Of(name)} stands in this list twice; keep one");
                continue;
            }

            names.Add(name);
        }

        return names;
    }

    /// <summary>The entries of a map whose keys are names of the file's own; empty in silence for null.</summary>
    public IReadOnlyList<Node.MapEntry> Entries(Node? node, string what)
    {
        if (node is not Node.Map map)
        {
            if (node is not null)
            {
                log.Add("PR-Y08", node.Place, $"{what} are written as NAME: ...; here stands {node.Shape}");
            }

            return [];
        }

        return [.. map.Entries.Where(entry => Name(entry.Key) is not null)];
    }

    public static string UnitHint(string text) =>
        Quoting.Hint(text, [.. Units.All.Select(unit => unit.Symbol).Where(symbol => symbol.Length > 0)]);

    private static string NotAQuantity(string text)
    {
        int end = text.AsSpan().LastIndexOfAnyInRange('0', '9') + 1;
        string unit = text[end..].Trim();
        return unit.Length > 0 && Units.Find(unit) is null && text.AsSpan(0, end).IndexOf(',') < 0
            ? $"{Quoting.Of(text)} was read, and {Quoting.Of(unit)} is no unit that is known; {UnitHint(unit)}"
            : $"{Quoting.Of(text)} was read; a number with a point and its unit is wanted, as in 0.0520 in";
    }
}
