using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Host;
using ProcRunner.Tui.Screens;

namespace ProcRunner.Tui.Tests.Host;

/// <summary>
/// A program around a screen that misbehaves on demand, to be run on a real terminal: the product has no command that breaks it.
/// </summary>
internal static class TryProgram
{
    /// <summary>Its command line.</summary>
    public static string Command => $"dotnet {typeof(TryProgram).Assembly.Location}";

    private static int Main()
    {
        Environment.SetEnvironmentVariable("DisableRealDriverIO", null);
        TerminalKind kind = ScreenHost.Terminal(out string fault);
        if (fault.Length > 0)
        {
            Console.Error.WriteLine(fault);
            return 2;
        }

        Clock clock = new();
        return ScreenHost.Run(new Desk(new Misbehaving(clock)), new HostOptions(kind, clock, () => true, () => true));
    }

    /// <summary>A wall clock that can be set back.</summary>
    private sealed class Clock : TimeProvider
    {
        public TimeSpan SetBy { get; set; }

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => System.GetUtcNow() + SetBy;
    }

    private sealed class Misbehaving(Clock clock) : Screen
    {
        private readonly EntryLine _line = new();
        private string _last = "";
        private int _entries;

        public override void Draw(Canvas canvas, Look look)
        {
            canvas.Put(0, 0, Line($"try {canvas.Width} x {canvas.Height}"), Ink.Strong);
            canvas.PutRight(canvas.Width, 0, look.Now.ToString("HH:mm:ss", null));
            canvas.Put(0, 2, Line($"entry {_entries}: {_last}|"), Ink.Bad);
            canvas.Put(canvas.Width - 1, canvas.Height - 1, '#', Ink.Plain);
            canvas.Cursor = (canvas.Put(0, canvas.Height - 1, "now " + _line.Text), canvas.Height - 1);
        }

        private static string Line(FormattableString text) => FormattableString.Invariant(text);

        public override Turn Press(KeyPress key)
        {
            if (key.Kind != KeyKind.Enter)
            {
                _line.Press(key);
                return Turn.Stay;
            }

            _last = _line.Take();
            _entries++;
            switch (_last)
            {
                case "leave":
                    return new Turn.Leave();
                case "hang":
                    Thread.Sleep(Timeout.Infinite);
                    break;
                case "back":
                    clock.SetBy = TimeSpan.FromHours(-1);
                    break;
                case "throw":
                    throw new InvalidOperationException("thrown on the loop");
                case "thread":
                    new Thread(() => throw new InvalidOperationException("thrown on a thread")).Start();
                    break;
                default:
                    break;
            }

            return Turn.Stay;
        }
    }
}
