using System.Runtime.CompilerServices;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Time;

namespace ProcRunner.Tui.Host;

/// <summary>Terminal.Gui's ANSI driver with our input and output in place of its own.</summary>
internal sealed class TerminalParts(TerminalOutput output, Wake wake, Action gone)
    : AnsiComponentFactory(null, output, null)
{
    /// <summary>Tells the driver of a changed window when it is asked to look.</summary>
    public ISizeMonitor? Size { get; private set; }

    /// <summary>An application on these parts, not yet begun.</summary>
    public IApplication Application(ITimeProvider time) => (IApplication)Create(this, time);

    /// <inheritdoc/>
    public override IInput<char> CreateInput() => new TerminalInput(wake, gone);

    /// <inheritdoc/>
    public override ISizeMonitor CreateSizeMonitor(IOutput consoleOutput, IOutputBuffer outputBuffer) =>
        Size = base.CreateSizeMonitor(consoleOutput, outputBuffer);

    // The library takes other parts only by a constructor that it keeps to itself; Application.Create knows three drivers and
    // no others. The version is pinned, and tests press keys through this.
    [UnsafeAccessor(UnsafeAccessorKind.Constructor)]
    [return: UnsafeAccessorType("Terminal.Gui.App.ApplicationImpl, Terminal.Gui")]
    private static extern object Create(IComponentFactory factory, ITimeProvider time);
}
