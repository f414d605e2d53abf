using System.Runtime.CompilerServices;
using ProcRunner.Testing;

namespace ProcRunner.Tui.Tests.Shop;

/// <summary>Pictures of screens at the two sizes that count, each committed under its name and size.</summary>
internal static class ScreenPictures
{
    /// <summary>Each name at both sizes.</summary>
    public static TheoryData<string, int, int> Of(IEnumerable<string> names)
    {
        TheoryData<string, int, int> data = [];
        foreach (string name in names)
        {
            data.Add(name, 80, 24);
            data.Add(name, 120, 40);
        }

        return data;
    }

    /// <summary>Compares a picture with the committed one beside the test's source.</summary>
    public static void Match(
        string picture,
        string name,
        int width,
        int height,
        [CallerFilePath] string testSource = ""
    ) => Golden.Match(picture, FormattableString.Invariant($"{name}-{width}x{height}.txt"), testSource);
}
