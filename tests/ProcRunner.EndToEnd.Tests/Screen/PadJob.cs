using ProcRunner.Tui.Tests.Run;

namespace ProcRunner.EndToEnd.Tests.Screen;

/// <summary>
/// The demo job as keys of a number pad, entry by entry: found by working through it at the screens in memory, where what is to be
/// pressed is read off the picture.
/// </summary>
internal static class PadJob
{
    /// <summary>The keys of each entry; asserting lines have none.</summary>
    public static IReadOnlyList<string> Keys { get; } = Find();

    private static List<string> Find()
    {
        using DemoJob job = new();
        PadOperator person = new(job.Job);
        List<string> keys = [];
        foreach (string entry in DemoJob.Entries)
        {
            int before = person.Pressed.Length;
            person.Take(entry);
            keys.Add(person.Pressed.ToString(before, person.Pressed.Length - before));
        }

        return [.. keys.Where(of => of.Length > 0)];
    }
}
