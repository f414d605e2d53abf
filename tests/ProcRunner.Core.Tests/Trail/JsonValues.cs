using FsCheck;
using FsCheck.Fluent;
using ProcRunner.Trail;

namespace ProcRunner.Tests.Trail;

/// <summary>Makes JSON values of every kind, with the characters that need care.</summary>
internal static class JsonValues
{
    private static readonly string[] Pieces =
    [
        "a",
        "Z",
        "0",
        " ",
        "\"",
        "\\",
        "/",
        "\0",
        "\b",
        "\t",
        "\n",
        "\u000b",
        "\f",
        "\r",
        "\u001b",
        "\u001f",
        "\u007f",
        "\u0080",
        "é",
        "€",
        "\ud7ff",
        "\ue000",
        "\ufb33",
        "\ufffd",
        "\uffff",
        "\ud83d\ude00",
        "\udbff\udfff",
    ];

    public static Arbitrary<Json> Arbitrary { get; } = Values(4).ToArbitrary();

    private static Gen<Json> Values(int depth)
    {
        Gen<Json> text = TextGen();
        Gen<Json> whole = Gen.Elements(0L, 1, -1, 41, 1_000_000, Json.LargestWhole, -Json.LargestWhole)
            .Select(number => (Json)new Json.Whole(number));
        Gen<Json> word = Gen.Elements(Json.Nothing, new Json.Flag(true), new Json.Flag(false));
        if (depth == 0)
        {
            return Gen.OneOf(text, whole, word);
        }

        Gen<Json> inner = Values(depth - 1);
        Gen<Json> list = inner.ListOf().Select(items => (Json)new Json.List([.. items.Take(4)]));
        Gen<Json> map = PairsOf(inner).Select(pairs => (Json)Json.MapOf([.. pairs.DistinctBy(pair => pair.Item1)]));
        return Gen.OneOf(text, whole, word, list, map);
    }

    private static Gen<Json> TextGen() =>
        Gen.Elements(Pieces).ListOf().Select(pieces => (Json)new Json.Text(string.Concat(pieces.Take(12))));

    private static Gen<IEnumerable<(string, Json)>> PairsOf(Gen<Json> inner) =>
        Gen.Elements(Pieces)
            .ListOf()
            .Select(pieces => string.Concat(pieces.Take(3)))
            .Zip(inner)
            .ListOf()
            .Select(pairs => pairs.Take(5).Select(pair => (pair.Item1, pair.Item2)));
}
