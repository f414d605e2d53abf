using ProcRunner.Runs;
using ProcRunner.Tui.Screens.Parts;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>The readout of the machine, and how this screen behaves.</summary>
internal static class SettingsMenu
{
    /// <summary>The menu.</summary>
    public static Screen Of(ShopSession session) =>
        new MenuScreen(session, "Settings", () => About(session), () => Items(session));

    private static string About(ShopSession session) =>
        session.Store.Shop.Readout is { } readout
            ? $"Readout: {ReadoutWords.Of(readout)}."
            : "Readout: not set up yet. It is needed before the first zero.";

    private static IReadOnlyList<MenuItem> Items(ShopSession session)
    {
        ScreenSettings settings = session.Settings;
        return
        [
            MenuItem.To("set up the machine's readout", () => new ReadoutForm(session)),
            new(
                () => $"sign-out: {IdleForm.InWords(session.Store.Shop.IdleMinutes)}; a lead sets it",
                () => new Turn.To(new IdleForm(session))
            ),
            new(
                () => $"bell at a refusal: {OnOff(settings.Bell)}; this switches it",
                () => Set(session, !settings.Bell, settings.Colours)
            ),
            new(
                () => $"colours: {OnOff(settings.Colours)}; this switches them",
                () => Set(session, settings.Bell, !settings.Colours)
            ),
            new(
                () => $"on records: {ContactForm.InWords(session.Store.Shop.Contact)}; a lead sets it",
                () => new Turn.To(new ContactForm(session))
            ),
        ];
    }

    private static Turn Set(ShopSession session, bool bell, bool colours)
    {
        string? trouble = session.Settings.Set(bell, colours);
        session.LeaveWord(trouble ?? $"Bell {OnOff(bell)}, colours {OnOff(colours)}.");
        return Turn.Stay;
    }

    private static string OnOff(bool on) => on ? "on" : "off";
}
