namespace ProcRunner.ShopMath;

/// <summary>A use of a <see cref="WorkFunction"/> with its result; every one is worked out by a test.</summary>
/// <param name="Given">Arguments with semicolons between: <c>hole-largest=1.6425 in; part-smallest=1.6445 in</c>.</param>
/// <param name="Gives">Results the same way, each rounded to the places shown: <c>least interference=0.0020 in</c>.</param>
/// <param name="Source">Where the result is printed, or how it was worked out outside this program.</param>
public sealed record WorkExample(string Given, string Gives, string Source)
{
    /// <summary>The arguments by name.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Arguments => Pairs(Given);

    /// <summary>The results by name.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Results => Pairs(Gives);

    private static List<KeyValuePair<string, string>> Pairs(string text) =>
        [
            .. text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
                .Select(part => part.Split('=', 2, StringSplitOptions.TrimEntries))
                .Select(pair => KeyValuePair.Create(pair[0], pair.ElementAtOrDefault(1) ?? "")),
        ];
}
