namespace ProcRunner.Tui.Shell;

/// <summary>How this machine's screen behaves: kept beside the stores, no part of any trail.</summary>
internal sealed class ScreenSettings
{
    private readonly string? _file;

    private ScreenSettings(string? file) => _file = file;

    /// <summary>True when a refusal rings the terminal's bell.</summary>
    public bool Bell { get; private set; } = true;

    /// <summary>True when colours are used. NO_COLOR, or a terminal without them, overrides it.</summary>
    public bool Colours { get; private set; } = true;

    /// <summary>Reads a file; one that is missing or strange gives what is usual.</summary>
    /// <param name="file">The file; null keeps nothing.</param>
    public static ScreenSettings From(string? file)
    {
        ScreenSettings settings = new(file);
        try
        {
            foreach (string line in file is not null && File.Exists(file) ? File.ReadLines(file).Take(20) : [])
            {
                settings.Bell &= line != "bell off";
                settings.Colours &= line != "colours off";
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // What is usual will do.
        }

        return settings;
    }

    /// <summary>Sets both and keeps them; null, or why they hold only until the program ends.</summary>
    public string? Set(bool bell, bool colours)
    {
        (Bell, Colours) = (bell, colours);
        if (_file is null)
        {
            return null;
        }

        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(_file)!);
            File.WriteAllText(_file, $"bell {(bell ? "on" : "off")}\ncolours {(colours ? "on" : "off")}\n");
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return $"This holds until the program ends; it couldn't be kept: {e.Message}";
        }
    }
}
