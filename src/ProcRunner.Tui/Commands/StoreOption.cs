using System.CommandLine;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary>The options that every verb on a store has.</summary>
internal static class StoreOption
{
    /// <summary>The store's folder.</summary>
    public static Option<string?> Create() =>
        new("--store") { Description = $"the store's folder (otherwise {Machine.ShopFolder})" };

    /// <summary>The folder that the options and the stamp name: the demo shop's for the demo job.</summary>
    public static string Folder(string? given, string stamp = "") =>
        given is not null ? Path.GetFullPath(given)
        : Demo.DemoShop.IsDemo(stamp) ? Machine.DemoFolder
        : Machine.ShopFolder;
}
