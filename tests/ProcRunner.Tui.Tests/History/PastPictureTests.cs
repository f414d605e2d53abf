using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Shop;
using ProcRunner.Tui.Tests.Shop;

namespace ProcRunner.Tui.Tests.History;

/// <summary>The screens of the shop's past as pictures, at both sizes. Everything in them is invented.</summary>
public sealed class PastPictureTests : IDisposable
{
    private static readonly string[] Names =
    [
        "readings",
        "trend",
        "trend-by-gauge",
        "trend-too-few",
        "recall",
        "recall-part",
        "recall-gauge",
        "links",
        "apart",
        "link",
        "narrow",
        "days",
        "state-back",
        "found-like",
    ];

    private readonly PastBench _past = new();

    public static TheoryData<string, int, int> Pictures { get; } = ScreenPictures.Of(Names);

    public void Dispose() => _past.Dispose();

    [Theory]
    [MemberData(nameof(Pictures))]
    public void Every_screen_looks_like_this(string name, int width, int height)
    {
        Desk desk = Make(name);
        desk.Draw(width, height, _past.Shop.Look);

        ScreenPictures.Match(desk.Picture(_past.Shop.Look, width, height), name, width, height);
    }

    [Fact]
    public void Every_way_to_tell_a_trend_apart_is_one_key_and_ASCII_is_enough_for_it()
    {
        Desk desk = Make("trend");
        foreach (string key in new[] { "2\n", "3\n", "4\n", "5\n", "6\n", "1\n" })
        {
            string picture = desk.Type(key).Picture(_past.Shop.Look with { Glyphs = Glyphs.Ascii });
            Assert.DoesNotContain(picture, c => c > '~');
        }

        Assert.IsType<ReadingsScreen>(desk.Type("0\n").Top);
    }

    [Fact]
    public void They_match_or_apart_is_written_down_from_the_screen()
    {
        Desk desk = Make("links").Type("1\n");
        Assert.Contains("don't match", desk.Picture(_past.Shop.Look), StringComparison.Ordinal);

        desk.Type("2\n1\n");
        Assert.Equal("the other one comes later", Assert.Single(_past.Back.State.Compared).Value.Reason);
    }

    private Desk Make(string name)
    {
        ShopSession session = _past.Shop.Session;
        Desk List() => new(new JobListScreen(session));
        return name switch
        {
            "readings" => List().Type("/8\n"),
            "trend" => List().Type("/8\nrecession\n"),
            "trend-by-gauge" => List().Type("/8\nrecession\n3\n"),
            "trend-too-few" => List().Type("/8\nrecession\n6\n"),
            "recall" => List().Type("/9\n1\n"),
            "recall-part" => List().Type("/9\n1\nG-77\n\n"),
            "recall-gauge" => List().Type("/9\n2\n1\n"),
            "links" => new(new LinksScreen(session, _past.Back)),
            "apart" => new(new ApartForm(session, _past.Back)),
            "link" => new(new LinkForm(session, _past.Back)),
            "narrow" => List().Type("/2\nfield\n/"),
            "days" => List().Type("/2\nfield\n/2\n2031.4.1\n"),
            "state-back" => new(new JobScreen(session, _past.Back)),
            "found-like" => List().Type("/2\n2471\n"),
            _ => throw new ArgumentException(name, nameof(name)),
        };
    }
}
