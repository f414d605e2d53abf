using ProcRunner.Shop;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>What every key does on the screens of the shop.</summary>
internal static class HelpText
{
    /// <summary>The page of a shop; the demo shop's tells its PINs.</summary>
    public static IReadOnlyList<TextLine> Of(ShopState shop) =>
        DemoShop.Is(shop)
            ?
            [
                .. Lines,
                new(""),
                new("The demo shop", Ink.Strong),
                new($"Everything in it is invented. Its PINs are public: {DemoShop.Pins}.", Indent: 2),
            ]
            : Lines;

    /// <summary>The page.</summary>
    public static IReadOnlyList<TextLine> Lines { get; } =
    [
        new("Everything can be done with the number pad. Nothing is chosen before Enter.", Ink.Strong),
        new(""),
        new("In a list", Ink.Strong),
        Key("number Enter", "chooses; a number means the same on every page"),
        Key("Enter", "where a screen says so, does what is next"),
        Key("+  -", "next page, page before (Page Down and Page Up do the same)"),
        Key("/", "the menu, where there is one"),
        Key("0 Enter", "one screen back (Esc does the same, and / where there is no menu)"),
        Key("F2", "from anywhere: somebody else is at the machine; what was typed waits"),
        Key("*", "this page"),
        new(""),
        new("In a form", Ink.Strong),
        Key("Enter", "takes the line; alone it takes what is proposed"),
        Key("number Enter", "takes one of the numbered answers; words of your own are typed instead"),
        Key("/", "in an empty line: one line back, from the first one out; nothing is written (Esc too)"),
        Key("Enter", "on the last line writes the form"),
        new(""),
        new("Who works and PINs", Ink.Strong),
        new(
            "Whoever works is chosen from a list, without a PIN: every entry carries their name. A PIN is asked for where a name must be proved: sign-offs, concessions, scrapping a head, and whatever changes who may sign. A PIN is never shown and never kept. After three wrong ones in a row that person's PIN waits half a minute, then longer, a quarter of an hour at most.",
            Indent: 2
        ),
        new(""),
        new("A job", Ink.Strong),
        new(
            "What Enter has taken is on the disk before the screen says so. Power gone, window closed, program ended: the next start is at the same step. Nothing is ever overwritten; a slip is corrected by a new entry with a reason.",
            Indent: 2
        ),
    ];

    private static TextLine Key(string key, string does) => new(does, Indent: 2, Label: key);
}
