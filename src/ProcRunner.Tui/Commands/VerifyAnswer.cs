using System.Globalization;
using ProcRunner.Store.Local;
using ProcRunner.Trail;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Commands;

/// <summary>What a check came to, in words and for scripts.</summary>
internal static class VerifyAnswer
{
    /// <summary>One check in words.</summary>
    public static void Tell(JobCheck check, ITrailReader reader)
    {
        StoreFinding? first = check.Findings.FirstOrDefault(f => f.IsBroken);
        if (check.IsPractice)
        {
            Say.Line($"{check.Name}: PRACTICE. ITS SIGN-OFFS ARE WORTH NOTHING, whatever else is said here.");
        }

        Say.Line(
            first is null
                ? $"{check.Name}: {reader.ReadTrail(check.Of).Verdict.InWords()}{Signatures(check)}"
                : $"{check.Name}: IT DOESN'T HOLD. {first.Text}"
        );
        foreach (StoreFinding finding in check.Findings.Where(f => f != first))
        {
            Say.Line($"  {finding.Text}");
        }
    }

    /// <summary>Says loudly that the sign-offs of the demo shop, or of a practice room, are worth nothing.</summary>
    public static void TellOfDemo(bool demo, string shop)
    {
        if (shop == PracticeRoom.Name)
        {
            Say.Line(
                "A PRACTICE ROOM: its PINs are public and its heads invented, so its sign-offs are worth nothing."
            );
        }

        if (demo)
        {
            Say.Line("THE DEMO SHOP: its PINs are public, so its sign-offs prove nothing.");
        }
    }

    /// <summary>The checks for a script.</summary>
    public static Json.Map Of(
        IReadOnlyList<(JobCheck Check, ITrailReader Reader)> checks,
        bool demo,
        params (string, Json)[] more
    ) =>
        Json.MapOf([
            ("holds", new Json.Flag(checks.All(c => c.Check.Holds))),
            ("demo", new Json.Flag(demo)),
            ("checked", Json.ListOf([.. checks.Select(c => Checked(c.Check, c.Reader))])),
            .. more,
        ]);

    private static string Signatures(JobCheck check) =>
        check.Of == JobId.Shop ? " Every person's key is certified up to a first lead, and every change signed for."
        : check.Signatures == 0 ? " Nothing is signed yet."
        : string.Create(
            CultureInfo.InvariantCulture,
            $" Signatures checked against their signers' keys: {check.Signatures}, all good."
        );

    private static Json.Map Checked(JobCheck check, ITrailReader reader)
    {
        var holds = reader.ReadTrail(check.Of).Verdict as TrailVerdict.Holds;
        return Json.MapOf(
            ("what", new Json.Text(check.Name)),
            ("id", new Json.Text(check.Of)),
            ("holds", new Json.Flag(check.Holds)),
            ("entries", holds is null ? Json.Nothing : new Json.Whole(holds.Entries)),
            ("last", holds is null ? Json.Nothing : new Json.Text(holds.Last.ToString())),
            ("signatures", new Json.Whole(check.Signatures)),
            ("practice", new Json.Flag(check.IsPractice)),
            (
                "findings",
                Json.ListOf([
                    .. check.Findings.Select(f =>
                        Json.MapOf(
                            ("broken", new Json.Flag(f.IsBroken)),
                            ("entry", f.Entry is { } entry ? new Json.Whole(entry) : Json.Nothing),
                            ("text", new Json.Text(f.Text))
                        )
                    ),
                ])
            )
        );
    }
}
