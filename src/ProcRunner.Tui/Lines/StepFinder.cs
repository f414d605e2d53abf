using ProcRunner.Runs;

namespace ProcRunner.Tui.Lines;

/// <summary>Finds the step and position that a line names: <c>final recession 3E</c>, <c>seat cut / recession 3E</c>.</summary>
internal static class StepFinder
{
    /// <summary>The step named, with a position or "head" as its last word; null with the reason when it can't be told.</summary>
    public static (At? At, string Fault) Find(RunState state, string text)
    {
        Plan plan = state.Plan;
        int space = text.LastIndexOf(' ');
        string last = space < 0 ? text : text[(space + 1)..];
        bool named = plan.TryPosition(last, out int position) || last == "head";
        position = last == "head" ? At.Head : position;
        string step = named && space >= 0 ? text[..space].Trim() : text.Trim();
        At[] found =
        [
            .. plan
                .Steps.Where(s => Same(s.FullName, step) || Same(s.Name, step))
                .SelectMany(s => plan.PositionsOf(s).Select(p => new At(s.Index, p)))
                .Where(at => !named || at.Position == position),
        ];
        if (found.Length == 1)
        {
            return (found[0], "");
        }

        if (found.Length == 0)
        {
            return (null, $"There is no step \"{text}\".");
        }

        Outlook outlook = new(state);
        At[] open = [.. found.Where(at => outlook.ViewOf(at) == StepView.Open)];
        return open.Length == 1
            ? (open[0], "")
            : (
                null,
                $"\"{text}\" can mean {string.Join(" or ", found.Take(3).Select(plan.NameOf))}: name the stage and the position."
            );
    }

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
