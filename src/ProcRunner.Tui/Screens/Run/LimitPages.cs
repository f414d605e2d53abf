using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Runs;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>Chooses a limit that the head spec leaves open: which, where, low, aim, high, and where it is from.</summary>
internal static class LimitPages
{
    private static readonly string[] Ends = ["low", "aim", "high"];

    /// <summary>The limits that are open to be chosen.</summary>
    public static IReadOnlyList<Limit> Open(RunWork work) =>
        [
            .. work
                .Plan.Head.Limits.Values.Where(l => l.Ask is not null)
                .DistinctBy(l => l.Name)
                .OrderBy(l => l.Name, StringComparer.Ordinal),
        ];

    /// <summary>Asks which.</summary>
    public static AskPage Which(RunWork work) =>
        new(work, "Choose which limit?")
        {
            Options = [.. Open(work).Select(l => new Option(l.Name, l.Ask!, _ => Where(work, l.Name)))],
        };

    private static Turn.Instead Where(RunWork work, string name)
    {
        int position = work.Prompt?.At.Position ?? At.Head;
        List<Option> options = [new("everywhere", "", _ => End(work, name, null, []))];
        if (position != At.Head)
        {
            string here = $"at {work.Plan.PositionName(position)} alone";
            options.Add(new Option(here, "", _ => End(work, name, position, [])));
        }

        return new Turn.Instead(new AskPage(work, $"Limit of {name}: where?") { Options = options });
    }

    private static Turn.Instead End(RunWork work, string name, int? position, Quantity?[] given)
    {
        Unit unit = UnitOf(work, name);
        if (given.Length == Ends.Length)
        {
            return new Turn.Instead(
                RunMenu.Reason(
                    work,
                    $"Limit of {name}: where is it from?",
                    StockAnswers.Limits,
                    (page, reason) =>
                        page.Go(
                            work.Do(new RunCommand.ChooseLimit(name, position, given[0], given[1], given[2], reason)),
                            reason
                        )
                )
            );
        }

        return new Turn.Instead(
            new AskPage(work, $"Limit of {name}: {Ends[given.Length]}")
            {
                About = [.. given.Select((q, i) => $"{Ends[i]}: {q?.ToString() ?? "none"}")],
                Label = Ends[given.Length],
                Unit = unit.Symbol,
                OnEnter = ("none", _ => End(work, name, position, [.. given, null])),
                Typed = (page, text) =>
                    EntryText.Parse(text, new FieldHint(unit)) is EntryResult.Taken { Values: [var value] }
                        ? End(work, name, position, [.. given, value])
                        : page.No($"\"{text}\" can't be read as one value in {unit}.", text),
            }
        );
    }

    private static Unit UnitOf(RunWork work, string name) =>
        work.Plan.TryCharacteristic(name, out int index)
            ? work.Plan.Procedure.Characteristics[index].UnitOn(work.Plan.Head)
            : work.Plan.Head.LengthUnit;
}
