using System.CommandLine;

namespace ProcRunner.Tui.Commands;

/// <summary><c>find TEXT</c>: jobs by stamp, customer, part, lot or proof code.</summary>
internal static class FindVerb
{
    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Argument<string> text = new("text")
        {
            Description = "a piece of a stamp, customer, part, part number, lot or proof code",
        };
        Option<bool> json = JsonOption.Create();
        Command verb = new("find", "find jobs by stamp, customer, part, lot or proof code") { text, json };
        verb.SetAction(parsed =>
            JobsVerb.List(StoreOption.ToRead(parsed), parsed.GetValue(text)!.Trim(), parsed.GetValue(json))
        );
        return verb;
    }
}
