using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using ProcRunner.Runs.Prompts;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Lines;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Run;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Tests.Run;

/// <summary>
/// Works through entries of line mode at the screen with the keys of a number pad alone. What is to be pressed is read off
/// the screen, as a person does: an answer's number stands before it.
/// </summary>
internal sealed class PadOperator
{
    private const string PadKeys = "0123456789.+-*/";
    private readonly JobRun _job;

    public PadOperator(JobRun job, LessonRun? lesson = null)
    {
        _job = job;
        Desk = new Desk(lesson is null ? RunScreen.Open(job) : RunScreen.Open(lesson));
    }

    public Desk Desk { get; }

    /// <summary>The keys pressed so far.</summary>
    public int Presses => Pressed.Length;

    /// <summary>The keys pressed so far, Enter as CR.</summary>
    public StringBuilder Pressed { get; } = new();

    /// <summary>The screen as text.</summary>
    public string See(int width = 80, int height = 24, bool ascii = false) =>
        Desk.Draw(width, height, LookOf(ascii)).ToString();

    /// <summary>Acknowledges the cautions of a stage if they are due.</summary>
    public void ReadCautions()
    {
        while (Desk.Top is CautionPage or LessonPage)
        {
            Enter();
        }
    }

    /// <summary>Takes one line of the entries.</summary>
    public void Take(string line)
    {
        ReadCautions();
        if (LineWords.After(LineWords.At, line) is { } place)
        {
            Assert.Equal(StepFinder.Find(_job.State, place).At, Prompter.Next(_job.State));
            return;
        }

        long before = _job.State.Sequence;
        Key(line);
        Assert.True(_job.State.Sequence > before, $"\"{line}\" recorded nothing:\n{See()}");
    }

    /// <summary>Presses keys of the pad.</summary>
    public void Type(string keys)
    {
        foreach (char key in keys)
        {
            Assert.Contains(key, PadKeys);
            Press(KeyPress.Of(key));
        }
    }

    /// <summary>Types on a whole keyboard, and Enter.</summary>
    public void Write(string text)
    {
        foreach (char key in text)
        {
            Press(KeyPress.Of(key));
        }

        Enter();
    }

    /// <summary>Both sizes, one under the other, as they are committed.</summary>
    public string Picture(bool ascii = false) => $"{See(80, 24, ascii)}{new string('=', 120)}\n{See(120, 40, ascii)}";

    /// <summary>Types a line and Enter.</summary>
    public void Enter(string keys = "")
    {
        Type(keys);
        Press(KeyPress.Enter);
        Assert.Equal(24, See().AsSpan().Count('\n'));
    }

    /// <summary>Presses the number that stands before an answer on the screen, and Enter.</summary>
    public void Choose(string answer)
    {
        Match found = Regex.Match(
            See(),
            $@"^ +(\d+) +{Regex.Escape(answer)}(  |$)",
            RegexOptions.Multiline,
            TimeSpan.FromSeconds(1)
        );
        Assert.True(found.Success, $"\"{answer}\" isn't on the screen:\n{See()}");
        Enter(found.Groups[1].Value);
    }

    private void Key(string line)
    {
        Prompt prompt = Prompter.At(_job.State, _job.Shop, Prompter.Next(_job.State)!.Value);
        (string words, string reason) = LineWords.Because(line);
        if (LineWords.After(LineWords.Changed, line) is { } change)
        {
            Type("/");
            Choose("changed");
            Choose(change);
        }
        else if (LineWords.After(LineWords.LeaveOut, line) is not null)
        {
            Type("/");
            Choose("not for this head");
            Choose(reason);
        }
        else if (LineWords.After(LineWords.Sign, line) is { } sign && prompt.Awaits == Awaited.Signature)
        {
            Sign(sign);
        }
        else if (prompt.Awaits == Awaited.WayOn)
        {
            Choose(words);
            if (reason.Length > 0)
            {
                Choose(reason);
            }
        }
        else
        {
            Answer(prompt, line);
        }
    }

    private void Answer(Prompt prompt, string line)
    {
        switch (prompt.Awaits)
        {
            case Awaited.Finding or Awaited.Choice:
                Choose(line);
                break;
            case Awaited.Done:
                Assert.Equal("done", line);
                Enter();
                break;
            case Awaited.Part:
                Array.ForEach(line.Replace("lot ", "", StringComparison.Ordinal).Split(", "), Enter);
                break;
            default:
                Array.ForEach(line.Split(' '), Enter);
                break;
        }
    }

    private void Sign(string text)
    {
        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words[0] == "pin")
        {
            Enter();
        }

        for (int i = 0; i < words.Length; i += 2)
        {
            if (words[i] == "pin")
            {
                Enter(words[i + 1]);
            }
            else
            {
                Choose(DemoShop.People.First(p => p.Id == words[i + 1]).Name);
            }
        }
    }

    private void Press(KeyPress key)
    {
        Pressed.Append(key.Kind == KeyKind.Enter ? "\r" : key.Text);
        Desk.Press(key);
    }

    private static Look LookOf(bool ascii) =>
        new(
            ascii ? Glyphs.Ascii : Glyphs.Utf8,
            DateTimeOffset.Parse("2026-01-05T08:00:00Z", CultureInfo.InvariantCulture)
        );
}
