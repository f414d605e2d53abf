using System.CommandLine;

namespace ProcRunner.Tui.Commands;

/// <summary><c>find TEXT</c>: jobs by stamp, customer, part or lot.</summary>
internal static class FindVerb
{
    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Argument<string> text = new("text") { Description = "a piece of a stamp, customer, part, part number or lot" };
        Option<bool> json = JsonOption.Create();
        Command verb = new("find", "find jobs by stamp, customer, part or lot") { text, json };
        verb.SetAction(parsed =>
            JobsVerb.List(StoreOption.ToRead(parsed), parsed.GetValue(text)!.Trim(), parsed.GetValue(json))
        );
        return verb;
    }
}
