using System.Globalization;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Parts;
using ProcRunner.Tui.Screens.Shop;

namespace ProcRunner.Tui.Tests.Shop;

/// <summary>Lists and text that are longer than the screen.</summary>
public sealed class PagingTests
{
    private static readonly Look Look = new(Glyphs.Utf8, DateTimeOffset.UnixEpoch);
    private int _chosen;

    [Fact]
    public void Plus_and_minus_turn_the_pages_of_a_list_and_a_number_means_the_same_on_each()
    {
        Desk desk = Menu(50);
        Assert.Contains("thing 1\n", desk.Picture(Look), StringComparison.Ordinal);
        Assert.Contains("page 1 of 3", desk.Picture(Look), StringComparison.Ordinal);

        desk.Type("++");
        Assert.Contains("thing 50\n", desk.Picture(Look), StringComparison.Ordinal);
        desk.Type("+");
        Assert.Contains("page 3 of 3", desk.Picture(Look), StringComparison.Ordinal);
        desk.Type("-2\n");
        Assert.Equal(2, _chosen);
    }

    [Fact]
    public void Every_row_is_on_exactly_one_page()
    {
        Desk desk = Menu(50);
        string all = "";
        for (int page = 0; page < 3; page++)
        {
            all += desk.Picture(Look);
            desk.Type("+");
        }

        for (int i = 1; i <= 50; i++)
        {
            string row = string.Create(CultureInfo.InvariantCulture, $"thing {i}\n");
            Assert.Equal(2, all.Split(row).Length);
        }
    }

    [Fact]
    public void A_taller_window_shows_more_and_a_shorter_one_keeps_a_page_that_exists()
    {
        Desk desk = Menu(50).Type("++");
        Assert.Contains("page 2 of 2", desk.Picture(Look, 120, 40), StringComparison.Ordinal);
        Assert.Contains("page 2 of 3", desk.Picture(Look), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("51\n")]
    [InlineData("99999999999999999999\n")]
    [InlineData("1.5\n")]
    [InlineData("1+17/32\n")]
    [InlineData("0.0520 in\n")]
    public void A_stray_reading_chooses_nothing(string typed)
    {
        Desk desk = Menu(50).Type(typed);

        Assert.Equal(0, _chosen);
        Assert.Contains("no such number", desk.Picture(Look), StringComparison.Ordinal);
    }

    [Fact]
    public void Star_rubs_out_what_is_typed_and_in_an_empty_line_explains_the_keys()
    {
        Desk desk = Menu(50).Type("12*\n");
        Assert.Equal(1, _chosen);

        desk.Type("*");
        Assert.Contains("Everything can be done with the number pad", desk.Picture(Look), StringComparison.Ordinal);
    }

    [Fact]
    public void Text_is_read_page_by_page_with_Enter_and_then_left()
    {
        TextLine[] lines = [.. Enumerable.Range(1, 40).Select(i => new TextLine($"line {i}"))];
        Desk desk = new(MenuOf(1), new PageScreen(new DoorWords(), "text", lines));
        Assert.Contains("page 1 of 3", desk.Picture(Look), StringComparison.Ordinal);
        desk.Type("\n\n");
        Assert.Contains("line 40\n", desk.Picture(Look), StringComparison.Ordinal);
        desk.Type("\n");
        Assert.IsType<MenuScreen>(desk.Top);
    }

    private Desk Menu(int count) => new(MenuOf(count));

    private MenuScreen MenuOf(int count) =>
        new(
            new DoorWords(),
            "things",
            () => "",
            () =>
                [
                    .. Enumerable
                        .Range(1, count)
                        .Select(i => new MenuItem(
                            () => string.Create(CultureInfo.InvariantCulture, $"thing {i}"),
                            () =>
                            {
                                _chosen = i;
                                return Turn.Stay;
                            }
                        )),
                ]
        );
}
