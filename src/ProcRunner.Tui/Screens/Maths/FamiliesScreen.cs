using ProcRunner.ShopMath;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Maths;

/// <summary>The shop's maths, family by family; letters look for a calculation by its name or what it is for.</summary>
/// <param name="desk">Where it is worked from.</param>
internal sealed class FamiliesScreen(MathsDesk desk) : ListScreen(desk.Words)
{
    private const int MostNearest = 12;

    private readonly List<(string Name, IReadOnlyList<WorkFunction> Functions)> _families = Families(desk);

    /// <inheritdoc/>
    public override bool IsPractice => desk.IsPractice;

    /// <inheritdoc/>
    protected override string Title => "Shop maths";

    /// <inheritdoc/>
    protected override string Asks => "Number, or part of a name";

    /// <inheritdoc/>
    protected override string Intro => MathsDesk.Promise;

    /// <inheritdoc/>
    protected override IReadOnlyList<ListColumn> Columns { get; } = [new("", 26, 34), new("", 0, 0)];

    /// <inheritdoc/>
    protected override int Count => _families.Count;

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Cells(int index, Look look)
    {
        (string name, IReadOnlyList<WorkFunction> functions) = _families[index];
        return [name, string.Join(", ", functions.Select(one => one.Name.Replace('-', ' ')))];
    }

    /// <inheritdoc/>
    protected override Turn Chosen(int index) =>
        new Turn.To(new FunctionsScreen(desk, _families[index].Name, _families[index].Functions));

    /// <inheritdoc/>
    protected override Turn Other(string text)
    {
        if (!text.Any(char.IsLetter))
        {
            return base.Other(text);
        }

        string[] words = text.Split([' ', '-'], StringSplitOptions.RemoveEmptyEntries);
        WorkFunction[] found =
        [
            .. WorkFunctions.All.Where(one =>
                Array.TrueForAll(
                    words,
                    word =>
                        one.Name.Contains(word, StringComparison.OrdinalIgnoreCase)
                        || one.Summary.Contains(word, StringComparison.OrdinalIgnoreCase)
                )
            ),
        ];
        return found.Length == 0
            ? Refuse($"No calculation has {Fitting.Line(text, 30)} in its name or summary.")
            : new Turn.To(new FunctionsScreen(desk, $"With {Fitting.Line(text, 20)}", found));
    }

    private static List<(string Name, IReadOnlyList<WorkFunction> Functions)> Families(MathsDesk desk)
    {
        List<(string Name, IReadOnlyList<WorkFunction> Functions)> families =
        [
            .. WorkFunctions
                .All.GroupBy(one => one.Family)
                .Select(family => (family.Key, (IReadOnlyList<WorkFunction>)[.. family])),
        ];
        WorkFunction[] nearest = [.. desk.Nearest().Take(MostNearest)];
        if (nearest.Length > 0)
        {
            families.Insert(0, ("with this step's numbers", nearest));
        }

        return families;
    }
}
