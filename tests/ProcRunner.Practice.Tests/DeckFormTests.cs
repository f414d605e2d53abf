using ProcRunner.Practice.Heads;

namespace ProcRunner.Practice.Tests;

/// <summary>The deck's form and what a skim leaves of it, worked by hand (mm).</summary>
public class DeckFormTests
{
    private const double Digits = 0.5e-9;

    // Tilted by 0.04 front to rear and 0.02 left to right, twisted by 0.08: the front left corner lies -0.02 - 0.01 + 0.04 off the
    // middle, the front right -0.02 + 0.01 - 0.04, the rear left 0.02 - 0.01 - 0.04, the rear right 0.02 + 0.01 + 0.04.
    [Fact]
    public void Tilt_and_twist_show_at_the_corners()
    {
        DeckForm deck = new(99, 0.04, 0.02, 0, 0, 0.08, 0);

        Assert.Equal(99.01, deck.Thickness(0), Digits);
        Assert.Equal(98.95, deck.Thickness(1), Digits);
        Assert.Equal(98.97, deck.Thickness(2), Digits);
        Assert.Equal(99.07, deck.Thickness(3), Digits);
        Assert.Equal(99, deck.Thickness(4), Digits);
        Assert.Equal(0.12, deck.Range, Digits);
        Assert.Equal(0.07, deck.Highest, Digits);
    }

    // Bowed by 0.10 along and 0.03 across, twisted by 0.08: every line along leaves straight by 0.10, every line across by 0.03 (the
    // twist is straight along both); on the diagonals the ends lie 0.13 less or more 0.04 under the middle.
    [Theory]
    [InlineData(0, 0.10)]
    [InlineData(1, 0.10)]
    [InlineData(2, 0.10)]
    [InlineData(3, 0.03)]
    [InlineData(4, 0.03)]
    [InlineData(5, 0.03)]
    [InlineData(6, 0.09)]
    [InlineData(7, 0.17)]
    public void Flatness_is_read_line_by_line(int line, double range) =>
        Assert.Equal(range, new DeckForm(99, 0, 0, 0.10, 0.03, 0.08, 0).LineRange(line), Digits);

    // A tilt alone is no want of flatness.
    [Fact]
    public void A_tilted_deck_is_flat()
    {
        DeckForm deck = new(99, 0.04, 0.02, 0, 0, 0, 0);
        Assert.All(Enumerable.Range(0, 8), line => Assert.Equal(0, deck.LineRange(line), Digits));
    }

    // Bow along 0.10: half way from front to middle 0.025 low, and half way from there to the middle half of that. Bow across 0.03:
    // an eighth of the way across lies between 0.03 and 0.0075 low, 0.01875.
    [Theory]
    [InlineData(0, 0.5, -0.10)]
    [InlineData(0.25, 0.5, -0.025)]
    [InlineData(0.375, 0.5, -0.0125)]
    [InlineData(0.5, 0.125, -0.01875)]
    [InlineData(1, 1, -0.13)]
    public void Between_its_points_the_deck_runs_straight(double along, double across, double height) =>
        Assert.Equal(height, new DeckForm(99, 0, 0, 0.10, 0.03, 0, 0).HeightAt(along, across), Digits);

    // Set up leaning 0.02 front to rear and 0.04 left to right, a skim of 0.20 leaves the front left 0.20 + 0.01 + 0.02 lower, the rear
    // right 0.20 - 0.01 - 0.02; what the cutter leaves at a point stands there.
    [Fact]
    public void A_skim_leaves_the_lean_of_the_set_up_and_the_cutters_own_form()
    {
        DeckForm deck = new(99, 0, 0, 0, 0, 0, 0);
        double[] left = new double[25];
        left[4] = 0.003;
        deck.Skim(0, 0.20, 0.02, 0.04, left);

        Assert.Equal(98.77, deck.Thickness(0), Digits);
        Assert.Equal(98.813, deck.Thickness(1), Digits);
        Assert.Equal(98.79, deck.Thickness(2), Digits);
        Assert.Equal(98.83, deck.Thickness(3), Digits);
    }

    // Two passes from one touch, 0.10 and 0.15 under it, took 0.15. Touched again it counts from there.
    [Fact]
    public void A_skim_counts_from_where_the_deck_was_touched()
    {
        DeckForm deck = new(99, 0, 0, 0, 0, 0, 0.20);
        deck.Skim(0, 0.10, 0, 0, new double[25]);
        deck.Skim(0, 0.15, 0, 0, new double[25]);
        Assert.Equal(0.15, deck.Taken, Digits);
        Assert.Equal(0.05, deck.Pit, Digits);
        deck.BeginSkim();
        Assert.Equal(0, deck.Taken, Digits);
        deck.Skim(deck.Highest, 0.02, 0, 0, new double[25]);

        Assert.Equal(0.02, deck.Taken, Digits);
        Assert.Equal(0.03, deck.Pit, Digits);
        Assert.Equal(98.83, deck.Thickness(4), Digits);
    }
}
