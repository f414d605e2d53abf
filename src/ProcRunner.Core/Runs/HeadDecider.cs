namespace ProcRunner.Runs;

/// <summary>The heads of one engine: linked, compared, and not released without the other being thought of.</summary>
internal static class HeadDecider
{
    /// <summary>Links another head of the same engine.</summary>
    public static Decision Link(Deciding on, RunCommand.LinkHead link) =>
        link.Job == on.State.JobId ? Deciding.No("A head isn't linked with itself.")
        : on.State.Linked.Exists(l => l.Job == link.Job)
            ? Deciding.No($"{link.Stamp} is linked with this head already.")
        : Deciding.Yes(new RunEvent.HeadLinked(link.Job, link.Stamp));

    /// <summary>Writes down how two heads compare and how this one goes out.</summary>
    public static Decision Compare(Deciding on, RunEvent.HeadsCompared compared)
    {
        if (!on.State.Linked.Exists(l => l.Job == compared.Job))
        {
            return Deciding.No($"{compared.Stamp} isn't linked with this head.", "Link them first.");
        }

        if (!compared.Together)
        {
            return compared.Reason.Length == 0
                ? Deciding.No("A head that goes out apart from its other one needs a reason.", "Say why.")
                : Deciding.Yes(compared);
        }

        string[] against =
        [
            .. compared.Figures.Where(f => f.Differs || !f.IsKnown).Take(5).Select(InWords),
            .. compared.Figures.Count == 0 ? (string[])["nothing of either head is known yet"] : [],
        ];
        return against.Length == 0
            ? Deciding.Yes(compared)
            : Deciding.No("The heads don't match, or one of them isn't known yet.", against);
    }

    /// <summary>Why a linked head can't be released yet, or null: each other head is compared with this one as it is now.</summary>
    public static Decision.Refused? NotCompared(Deciding on)
    {
        foreach (RunEvent.HeadLinked linked in on.State.Linked)
        {
            if (!on.State.Compared.TryGetValue(linked.Job, out RunEvent.HeadsCompared? compared))
            {
                return Deciding.No(
                    $"{linked.Stamp} is another head of this engine, and they weren't compared.",
                    "Compare them, then: heads together",
                    "heads apart because …"
                );
            }

            HashSet<(string, string)> now = [.. HeadComparison.SideOf(on.State)];
            if (!now.SetEquals(compared.Figures.Where(f => f.Here.Length > 0).Select(f => (f.Of, f.Here))))
            {
                return Deciding.No(
                    $"This head has changed since it was compared with {linked.Stamp}.",
                    "Compare them again, then: heads together",
                    "heads apart because …"
                );
            }
        }

        return null;
    }

    private static string InWords(HeadFigure figure) =>
        !figure.IsKnown
            ? $"{figure.Of}: not known on {(figure.Here.Length == 0 ? "this head" : "the other head")}"
            : $"{figure.Of}: {figure.Here}, and {figure.There}; apart by {figure.Difference}";
}
