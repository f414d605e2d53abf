using ProcRunner.People;
using ProcRunner.Runs.Prompts;
using ProcRunner.Store.Local;
using ProcRunner.Testing;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Run;
using ProcRunner.Tui.Screens.Shop;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Tests.Shop;

/// <summary>The first start in an empty place, and starts after it.</summary>
public sealed class FirstStartTests : IDisposable
{
    private readonly TempFolder _folder = new();
    private readonly List<ShopDoor> _doors = [];

    private string Store => _folder["store"];

    public void Dispose()
    {
        _doors.ForEach(door => door.Dispose());
        _folder.Dispose();
    }

    [Fact]
    public void A_newcomer_is_at_a_working_gate_of_the_demo_head_in_at_most_five_keys()
    {
        JobRun? run = null;
        ShopDoor door = Door((_, job) => RunScreen.Open(run = job));
        Desk desk = new([.. door.Start().Screens]);
        int keys = 0;
        while (desk.Top is not StepPage)
        {
            // The demo shop, then Enter for what is to be read: the cautions of the first stage.
            desk.Type(keys == 0 ? "1" : "\n");
            Assert.True(++keys <= 5, $"more keys than a newcomer should need:\n{desk.Picture(Now)}");
        }

        Assert.Equal(DemoShop.Stamp, run!.State.Job!.Stamp);
        long before = run.State.Sequence;
        string answer =
            Prompter.At(run.State, run.Shop, Prompter.Next(run.State)!.Value).Awaits is Awaited.Done ? "" : "1";
        desk.Type($"{answer}\n");
        Assert.True(run.State.Sequence > before, $"the gate took nothing:\n{desk.Picture(Now)}");
    }

    [Fact]
    public void Back_from_the_demo_head_there_is_the_list_of_heads()
    {
        Desk desk = Start().Type("1\n").Type("\u001b");

        Assert.IsType<JobListScreen>(desk.Top);
        Assert.Contains("DEMO", desk.Picture(Now), StringComparison.Ordinal);
    }

    [Fact]
    public void The_demo_shop_is_opened_again_where_it_was_left()
    {
        Start().Type("1\n");
        _doors[0].Dispose();

        Desk desk = Start();

        Assert.IsType<JobListScreen>(desk.Top);
        Assert.Equal(DemoShop.Operator, _doors[1].Session!.Person);
        Assert.Equal(DemoShop.Stamp, Assert.IsType<StandInRun>(desk.Type("\n").Top).Run.State.Job!.Stamp);
    }

    [Fact]
    public void A_shop_is_founded_with_its_first_lead()
    {
        Desk desk = Start().Type("2\nBent Valve Works\nT. Moss\n135790\n135790\n");

        Assert.IsType<JobListScreen>(desk.Top);
        Person lead = Assert.Single(_doors[0].Session!.Store.Shop.People.Values);
        Assert.Equal(("T. Moss", "moss", Role.Lead, true), (lead.Name, lead.Id, lead.Role, lead.IsRoot));
        Assert.Equal("Bent Valve Works", _doors[0].Session!.Store.Shop.Name);
        Assert.IsType<SigningResult.Made>(PersonKeys.TrySign(lead, "135790", "anything"u8));
        Assert.Equal("moss", _doors[0].Session!.Person);
    }

    [Theory]
    [InlineData("12345\n", "six digits")]
    [InlineData("13579x\n", "digits 0 to 9 alone")]
    [InlineData("135790\n135791\n", "isn't the same PIN")]
    public void A_PIN_that_wont_do_founds_nothing_and_is_asked_for_again(string keys, string said)
    {
        Desk desk = Start().Type("2\nBent Valve Works\nT. Moss\n" + keys);

        Assert.Contains(said, desk.Picture(Now), StringComparison.Ordinal);
        Assert.False(StoreFolder.Exists(Store));
    }

    [Fact]
    public void A_PIN_is_never_on_the_screen()
    {
        Desk desk = Start().Type("2\nBent Valve Works\nT. Moss\n");
        foreach (char digit in "135790")
        {
            desk.Type(digit.ToString());
            Assert.DoesNotContain("135", desk.Picture(Now), StringComparison.Ordinal);
        }

        Assert.Contains("******", desk.Picture(Now), StringComparison.Ordinal);
        desk.Type("\n");
        Assert.DoesNotContain("135790", desk.Picture(Now), StringComparison.Ordinal);
    }

    [Fact]
    public void A_shop_with_several_people_asks_who_works_before_anything_else()
    {
        Start().Type("2\nBent Valve Works\nT. Moss\n135790\n135790\n").Type("/6\n/R. Vale\n\n\n2468\n2468\n135790\n");
        Assert.Equal(2, _doors[0].Session!.Store.Shop.People.Count);
        _doors[0].Dispose();

        Desk desk = Start();
        Assert.IsType<WhoScreen>(desk.Top);

        desk.Type("1\n");
        Assert.Equal("vale", _doors[1].Session!.Person);
        Assert.IsType<JobListScreen>(desk.Top);
    }

    [Fact]
    public void What_was_found_while_opening_is_shown_first()
    {
        Start().Type("1\n");
        _doors[0].Dispose();
        File.AppendAllText(Path.Combine(Store, "book.trail"), "{\"cut off in the mid");

        Desk desk = Start();

        Assert.Contains("Found while opening the store", desk.Picture(Now), StringComparison.Ordinal);
        Assert.IsType<JobListScreen>(desk.Type("\n").Top);
    }

    [Fact]
    public void A_store_in_use_is_said_plainly_and_by_whom()
    {
        Start().Type("1\n");

        ShopDoor second = Door();
        (IReadOnlyList<Screen> screens, string fault) = second.Start();

        Assert.Empty(screens);
        Assert.Contains("in use", fault, StringComparison.Ordinal);
    }

    [Fact]
    public void A_stamp_leads_straight_to_its_head_and_an_unknown_one_says_so()
    {
        Start().Type("1\n");
        _doors[0].Dispose();

        (IReadOnlyList<Screen> known, _) = Door().Start("demo");
        Assert.Equal([typeof(JobListScreen), typeof(StandInRun)], known.Select(s => s.GetType()));
        _doors[1].Dispose();

        (IReadOnlyList<Screen> unknown, string fault) = Door().Start("9999");
        Assert.Empty(unknown);
        Assert.Contains("9999", fault, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void Welcome_and_founding_look_like_this(int width, int height)
    {
        Desk desk = Start();
        string size = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{width}x{height}");
        Golden.Match(desk.Picture(Now, width, height), $"welcome-{size}.txt");

        desk.Type("2\nBent Valve Works\nT. Moss\n135790\n1357");
        string founding = desk.Picture(Now, width, height)
            .Replace(Store, "/where/the/store/is", StringComparison.Ordinal);
        Golden.Match(string.Join('\n', founding.Split('\n').Skip(4)), $"founding-{size}.txt");
    }

    private static Look Now => new(Glyphs.Utf8, DateTimeOffset.UnixEpoch);

    private Desk Start()
    {
        (IReadOnlyList<Screen> screens, string fault) = Door().Start();
        Assert.True(screens.Count > 0, fault);
        return new Desk([.. screens]);
    }

    private ShopDoor Door(Func<ShopSession, JobRun, Screen>? run = null)
    {
        ShopDoor door = new(Store, ScreenSettings.From(null), run ?? ((_, job) => new StandInRun(job)), rounds: 1);
        _doors.Add(door);
        return door;
    }
}
