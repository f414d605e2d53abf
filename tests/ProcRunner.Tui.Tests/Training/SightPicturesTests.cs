using ProcRunner.Lessons;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Tests.Training;

/// <summary>Whatever an inspection of a practice head can find has a picture of its own, in which nothing is called by its name.</summary>
public sealed class SightPicturesTests
{
    // Drawn to scale, with a test of its own.
    private const string ToScale = "contact";

    public static TheoryData<string> Inspections =>
        [.. Findings().Where(finding => finding.Seen != ToScale).Select(finding => finding.Step)];

    [Theory]
    [MemberData(nameof(Inspections))]
    public void Every_condition_has_a_picture_that_fits_and_is_like_no_other(string step)
    {
        BoundFinding bound = Findings().Single(finding => finding.Step == step);
        string[] words = ["sound", .. bound.Words.Keys.Where(word => word != "sound")];
        string[][] pictures = [.. words.Select(word => SightPictures.Of(bound.Seen, word).ToArray())];

        Assert.All(pictures, picture => Assert.InRange(picture.Length, 3, GaugeFace.Rows));
        Assert.All(pictures.SelectMany(picture => picture), line => Assert.InRange(line.Length, 0, GaugeFace.Width));
        Assert.All(
            pictures.SelectMany(picture => picture),
            line => Assert.DoesNotContain(line, c => c is > '~' or < ' ')
        );
        Assert.Equal(pictures.Length, pictures.Select(picture => string.Join('\n', picture)).Distinct().Count());
        foreach (string named in bound.Words.Values.Concat(words))
        {
            Assert.All(
                pictures.SelectMany(picture => picture),
                line => Assert.DoesNotContain(named, line, StringComparison.OrdinalIgnoreCase)
            );
        }
    }

    [Fact]
    public void An_unknown_condition_has_none() => Assert.Empty(SightPictures.Of("threads", "unheard of"));

    private static IReadOnlyList<BoundFinding> Findings() =>
        LessonShelf.Bind(LessonShelf.All()[0]).Binding!.Setup.Findings;
}
