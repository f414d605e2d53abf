namespace ProcRunner.Tui.Drawing;

/// <summary>
/// What a stretch of text means; how that looks is the host's to say. Colours follow IEC 60073: red danger or faulty, yellow
/// abnormal, green normal, blue do this. No meaning is carried by ink alone: a word or a mark always says it too.
/// </summary>
internal enum Ink
{
    /// <summary>Ordinary text.</summary>
    Plain,

    /// <summary>Beside the point: labels, what is done.</summary>
    Quiet,

    /// <summary>What matters now.</summary>
    Strong,

    /// <summary>Do this: white on blue.</summary>
    Act,

    /// <summary>In limits: green.</summary>
    Good,

    /// <summary>Abnormal, to be looked at: yellow.</summary>
    Mind,

    /// <summary>Out of spec, danger: red.</summary>
    Bad,

    /// <summary>The practice mark: reversed.</summary>
    Practice,
}
