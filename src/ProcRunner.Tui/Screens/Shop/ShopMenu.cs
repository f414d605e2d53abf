using ProcRunner.Quantities;
using ProcRunner.Tui.Screens.Maths;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Everything besides the work on heads.</summary>
internal static class ShopMenu
{
    /// <summary>The menu.</summary>
    public static Screen Of(ShopSession session) =>
        new MenuScreen(session, session.Store.Shop.Name, () => "", () => Items(session));

    private static IReadOnlyList<MenuItem> Items(ShopSession session) =>
        [
            MenuItem.Instead("new job: a head comes in", () => new NewJobForm(session)),
            MenuItem.Instead("find a head: by stamp, customer, part, lot, proof code", () => new FindForm(session)),
            MenuItem.Instead("somebody else works", () => new WhoScreen(session)),
            MenuItem.Instead("look at a head: how it stands, history, notes, hand-over", () => Look(session)),
            MenuItem.Instead("released and scrapped heads", () => Closed(session)),
            MenuItem.Instead("people: who may sign", () => new PeopleScreen(session)),
            MenuItem.Instead("gauges and their calibration", () => new GaugesScreen(session)),
            MenuItem.Instead("history of a reading: chart, limits, capability", () => new ReadingsScreen(session)),
            MenuItem.Instead("recall: a part and lot, or a gauge", () => new RecallForm(session)),
            MenuItem.Instead(
                "shop maths: fits, springs, seats, heights, deck",
                () => new FamiliesScreen(Maths(session))
            ),
            new(() => "practice: lessons on a head that nobody owns", () => Practice(session)),
            MenuItem.Instead("settings: readout, sign-out, address, bell, colours", () => SettingsMenu.Of(session)),
            MenuItem.Instead("what every key does", session.Help),
            new(() => "leave the program; everything is on the disk", () => new Turn.Leave()),
        ];

    private static MathsDesk Maths(ShopSession session) =>
        new(session, IsPractice: false, session.Store.Shop.Readout?.Unit == Units.Inch, []);

    private static Turn Practice(ShopSession session)
    {
        (Screen? screen, string fault) = session.Practice();
        if (screen is null)
        {
            session.LeaveWord(fault);
        }

        return screen is null ? Turn.Back : new Turn.Instead(screen);
    }

    private static PickJobScreen Look(ShopSession session) =>
        new(session, "Look at a head", () => [.. JobLedger.Read(session.Store).Jobs.Where(job => !job.IsClosed)]);

    private static PickJobScreen Closed(ShopSession session) =>
        new(
            session,
            "Released and scrapped heads",
            () => [.. JobLedger.Read(session.Store).Jobs.Where(job => job.IsClosed)]
        );
}
