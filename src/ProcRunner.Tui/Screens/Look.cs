using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Screens;

/// <summary>How things are to look here and now.</summary>
/// <param name="Glyphs">The characters of pictures.</param>
/// <param name="Now">The time, for clocks and how long ago.</param>
internal sealed record Look(Glyphs Glyphs, DateTimeOffset Now);
