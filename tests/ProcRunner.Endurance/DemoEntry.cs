namespace ProcRunner.Endurance;

/// <summary>One entry of the demo job.</summary>
/// <param name="Place">The line that asserts where the run is: <c>@ teardown / recession 1I</c>.</param>
/// <param name="Text">What is entered.</param>
internal sealed record DemoEntry(string Place, string Text)
{
    /// <summary>How the prompt for it begins: <c>teardown / recession, 1I: </c>.</summary>
    public string PromptStart
    {
        get
        {
            string place = Place[1..].Trim();
            int space = place.LastIndexOf(' ');
            return $"{place[..space]}, {place[(space + 1)..]}: ";
        }
    }

    /// <summary>Reads a file of entries, in which every entry follows an assertion of its place.</summary>
    public static IReadOnlyList<DemoEntry> ReadAll(string path)
    {
        List<DemoEntry> entries = [];
        string place = "";
        foreach (string line in File.ReadLines(path).Select(l => l.Trim()))
        {
            if (line.StartsWith('@'))
            {
                place = line;
            }
            else if (line.Length > 0 && !line.StartsWith('#'))
            {
                entries.Add(new(place, line));
            }
        }

        return entries;
    }
}
