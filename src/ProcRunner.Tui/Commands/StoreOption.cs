using System.CommandLine;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary>Which store a verb works on.</summary>
internal static class StoreOption
{
    /// <summary>The option, which every verb takes.</summary>
    public static Option<string?> Store { get; } =
        new("--store")
        {
            Description = "the store's folder; otherwise where the platform keeps a program's data",
            HelpName = "folder",
            Recursive = true,
        };

    /// <summary>The folder named; null when none was.</summary>
    public static string? Given(ParseResult parsed) =>
        parsed.GetValue(Store) is { } given ? Path.GetFullPath(given) : null;

    /// <summary>The folder named, or the shop's own.</summary>
    public static string OfShop(ParseResult parsed) => Given(parsed) ?? Machine.ShopFolder;

    /// <summary>The folder named, or the one where a stamp belongs: the demo shop's for the demo job.</summary>
    public static string OfStamp(ParseResult parsed, string stamp) =>
        parsed.GetValue(Store) is null && DemoShop.IsDemo(stamp) ? Machine.DemoFolder : OfShop(parsed);

    /// <summary>The folder named, or the shop's own, or the demo shop's while there is no other; that is said.</summary>
    public static string ToRead(ParseResult parsed)
    {
        string folder = OfShop(parsed);
        if (parsed.GetValue(Store) is null && !StoreFolder.Exists(folder) && StoreFolder.Exists(Machine.DemoFolder))
        {
            Console.Error.WriteLine("There is no shop here yet; this is the demo shop.");
            return Machine.DemoFolder;
        }

        return folder;
    }
}
