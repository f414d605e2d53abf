using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Screens;

/// <summary>
/// One screen: draws itself on any canvas of 80x24 or more, and says where a key leads. Knows nothing of terminals, so that
/// tests press keys and read canvases.
/// </summary>
internal abstract class Screen
{
    /// <summary>True when it shows a practice job: the desk then marks every line of the frame.</summary>
    public virtual bool IsPractice => false;

    /// <summary>True when the bell is to sound as it comes up: a refusal.</summary>
    public virtual bool RingsBell => false;

    /// <summary>Draws everything, each time it is asked.</summary>
    public abstract void Draw(Canvas canvas, Look look);

    /// <summary>Takes a key.</summary>
    public abstract Turn Press(KeyPress key);

    /// <summary>
    /// Somebody else may come to the machine: a PIN that is typed, half or whole, is forgotten. All else stays as it is.
    /// </summary>
    /// <returns>The screen that takes this one's place, or null to stay.</returns>
    public virtual Screen? ForgetPins() => null;

    /// <summary>Told when it becomes the screen on top again.</summary>
    public virtual void Return() { }

    /// <summary>Told when it was left for the screen before it, for good.</summary>
    public virtual void Left() { }
}
