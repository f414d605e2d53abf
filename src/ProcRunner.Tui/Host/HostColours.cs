using ProcRunner.Tui.Drawing;
using Terminal.Gui.Drawing;
using Attribute = Terminal.Gui.Drawing.Attribute;

namespace ProcRunner.Tui.Host;

/// <summary>
/// How ink looks. IEC 60073: red danger or faulty, yellow abnormal, green normal, blue do this (only as white on blue); white
/// and grey mean nothing. Ink never speaks alone: a word or a mark always says the same. Practice is reversed.
/// </summary>
/// <remarks>
/// A cell of Terminal.Gui carries an attribute, not an ink, so each ink has one of its own; what is sent for it is looked up
/// here, since the library knows no terminal without colours.
/// </remarks>
internal sealed class HostColours
{
    private readonly Dictionary<Attribute, string> _sent = [];

    /// <summary>The colours at a depth.</summary>
    public HostColours(ColourDepth depth)
    {
        foreach (Ink ink in Enum.GetValues<Ink>())
        {
            _sent[Of(ink)] = Sent(depth, ink);
        }
    }

    /// <summary>The attribute that stands for an ink.</summary>
    public static Attribute Of(Ink ink) => new(new Color((int)ink, 1, 1), new Color(0, 0, 0));

    /// <summary>The sequence that brings an attribute about, whatever was before it.</summary>
    public string SequenceFor(Attribute? attribute) =>
        attribute is { } known && _sent.TryGetValue(known, out string? sent) ? sent : _sent[Of(Ink.Plain)];

    private static string Sent(ColourDepth depth, Ink ink) =>
        "\u001b["
        + depth switch
        {
            ColourDepth.None => WithoutColour(ink),
            ColourDepth.Sixteen => Sixteen(ink),
            _ => Many(ink),
        }
        + "m";

    // ECMA-48 8.3.117: 0 as found, 1 bold, 7 reversed.
    private static string WithoutColour(Ink ink) =>
        ink switch
        {
            Ink.Strong or Ink.Mind or Ink.Bad => "0;1",
            Ink.Act or Ink.Practice => "0;7",
            _ => "0",
        };

    // A black ground is set with each: on a light one yellow can't be read. Bold lifts red and yellow to their bright ones
    // where 90 to 97 aren't known.
    private static string Sixteen(Ink ink) =>
        ink switch
        {
            Ink.Quiet => "0;37;40",
            Ink.Strong => "0;1;97;40",
            Ink.Act => "0;1;97;44",
            Ink.Good => "0;92;40",
            Ink.Mind => "0;1;93;40",
            Ink.Bad => "0;1;91;40",
            Ink.Practice => "0;7;97;40",
            _ => "0;97;40",
        };

    private static string Many(Ink ink) =>
        ink switch
        {
            Ink.Quiet => "0;38;5;250;48;5;16",
            Ink.Strong => "0;1;38;5;231;48;5;16",
            Ink.Act => "0;1;38;5;231;48;5;20",
            Ink.Good => "0;38;5;77;48;5;16",
            Ink.Mind => "0;1;38;5;226;48;5;16",
            Ink.Bad => "0;1;38;5;203;48;5;16",
            Ink.Practice => "0;7;38;5;255;48;5;16",
            _ => "0;38;5;255;48;5;16",
        };
}
