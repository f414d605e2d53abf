using ProcRunner.People;
using ProcRunner.Quantities;
using ProcRunner.Shop;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Shop;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Tests.Shop;

/// <summary>People, gauges and settings: keys are pressed, the shop book is looked at.</summary>
public sealed class ShopBookScreensTests : IDisposable
{
    private readonly ShopBench _bench = new();

    public void Dispose() => _bench.Dispose();

    [Fact]
    public void A_lead_adds_a_person_who_can_sign_with_the_PIN_chosen()
    {
        Desk desk = People().Type("/B. Rook\n\n1\n8642\n8642\n135790\n");

        Person rook = _bench.Shop.People["rook"];
        Assert.Equal(("B. Rook", Role.Operator, "moss"), (rook.Name, rook.Role, rook.CertifiedBy));
        Assert.IsType<SigningResult.Made>(PersonKeys.TrySign(rook, "8642", "x"u8));
        Assert.Empty(_bench.Shop.Uncertified());
        Assert.Contains("B. Rook may sign from now on.", See(desk), StringComparison.Ordinal);
        Assert.Contains("B. Rook", See(desk), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_the_leads_PIN_nobody_is_added()
    {
        long before = _bench.Shop.Mark.Sequence;
        Desk desk = People().Type("/B. Rook\n\n1\n8642\n8642\n135791\n");

        // What is written is that a wrong PIN was typed.
        Assert.Equal(before + 1, _bench.Shop.Mark.Sequence);
        Assert.Equal(1, _bench.Shop.WrongPins["moss"].InARow);
        Assert.False(_bench.Shop.People.ContainsKey("rook"));
        Assert.Contains("That is not the PIN of", See(desk), StringComparison.Ordinal);
        Assert.Contains("B. Rook", See(desk), StringComparison.Ordinal);

        // The PINs are asked for again, the rest stays.
        desk.Type("8642\n8642\n135790\n");
        Assert.True(_bench.Shop.People.ContainsKey("rook"));
    }

    [Fact]
    public void Address_and_telephone_are_set_by_a_lead_and_told_in_the_menu()
    {
        Desk desk = new Desk(new ContactForm(_bench.Session)).Type("a yard by the river\n135791\n");
        Assert.Equal("", _bench.Shop.Contact);

        desk.Type("135790\n");
        Assert.Equal("a yard by the river", _bench.Shop.Contact);
        Assert.Contains(
            "on records: a yard by the river; a lead sets it",
            new Desk(SettingsMenu.Of(_bench.Session)).Picture(_bench.Look),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void With_two_leads_one_is_chosen()
    {
        Assert.Null(_bench.Desk.AddPerson("reed", "C. Reed", Role.Lead, "246802", "moss", ShopBench.LeadPin));
        People().Type("/B. Rook\n\n1\n8642\n8642\n1\n246802\n");

        Assert.Equal("reed", _bench.Shop.People["rook"].CertifiedBy);
    }

    [Fact]
    public void A_person_changes_their_own_PIN_with_the_old_one()
    {
        People().Type("3\n1\n").Type("1111\n9753\n9753\n");
        Assert.IsType<SigningResult.Made>(PersonKeys.TrySign(_bench.Shop.People["vale"], "2468", "x"u8));

        Desk desk = People();
        int vale = 1 + _bench.Shop.People.Values.OrderBy(p => p.Name).ToList().FindIndex(p => p.Id == "vale");
        desk.Type(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{vale}\n1\n2468\n9753\n9753\n"));
        Assert.IsType<SigningResult.Made>(PersonKeys.TrySign(_bench.Shop.People["vale"], "9753", "x"u8));
        Assert.IsType<SigningResult.WrongPin>(PersonKeys.TrySign(_bench.Shop.People["vale"], "2468", "x"u8));
    }

    [Fact]
    public void A_trainee_becomes_an_operator_by_a_lead()
    {
        Choose("finch").Type("2\n\n1\n135790\n");

        Assert.Equal(Role.Operator, _bench.Shop.People["finch"].Role);
        Assert.Empty(_bench.Shop.Uncertified());
    }

    [Fact]
    public void Whom_a_lead_vouched_for_stays_vouched_for_when_they_are_a_lead_no_more()
    {
        Assert.Null(_bench.Desk.AddPerson("reed", "C. Reed", Role.Lead, "246802", "moss", ShopBench.LeadPin));
        Assert.Null(_bench.Desk.AddPerson("rook", "B. Rook", Role.Operator, "8642", "reed", "246802"));
        Assert.Null(_bench.Desk.ChangePerson("reed", "C. Reed", Role.Operator, "moss", ShopBench.LeadPin));

        Assert.Empty(_bench.Shop.Uncertified());
        Assert.DoesNotContain(Store.Local.StoreCheck.All(_bench.Store.Reader), f => f.IsBroken);
    }

    [Fact]
    public void Who_has_left_cant_work_or_sign_and_is_still_known()
    {
        Desk desk = Choose("vale").Type("4\n135790\n");

        Assert.NotNull(_bench.Shop.People["vale"].RetiredAt);
        Assert.DoesNotContain("vale", _bench.Desk.Present.Select(p => p.Id));
        Assert.Contains("Has left", See(desk), StringComparison.Ordinal);
        Assert.Contains("left 2031-04-07 10:30", See(desk.Type("0\n")), StringComparison.Ordinal);
    }

    [Fact]
    public void The_last_lead_cant_leave()
    {
        Desk desk = Choose("moss").Type("3\n135790\n");

        Assert.Null(_bench.Shop.People["moss"].RetiredAt);
        Assert.Contains("only lead", See(desk), StringComparison.Ordinal);
    }

    [Fact]
    public void A_gauge_is_added_with_the_number_pad_but_for_its_names()
    {
        Desk desk = Gauges().Type("/B1\nsmall bore gauge\nbore\n");
        desk.Type("1\n.0001\n.00005\n.010\n20311231\n");

        Gauge gauge = _bench.Shop.Gauges["B1"];
        Assert.Equal(("small bore gauge", "bore", "0.0001 in"), (gauge.Name, gauge.Kind, gauge.Resolution.ToString()));
        Assert.Equal(("0.00005 in", "0.010 in"), (gauge.Uncertainty.ToString(), gauge.Turn.ToString()));
        Assert.Equal(new DateOnly(2031, 12, 31), gauge.CalibratedUntil);
    }

    [Fact]
    public void A_gauge_that_was_entered_wrong_is_put_right_under_its_id()
    {
        Desk desk = Gauges();
        int index = 1 + _bench.Shop.Gauges.Values.OrderBy(g => g.Kind).ToList().FindIndex(g => g.Id == "S1");
        desk.Type(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{index}\n2\n"));
        desk.Type("\n\n7\n2\n3\n\n\n");

        Gauge gauge = _bench.Shop.Gauges["S1"];
        Assert.Equal(
            ("spring tester", "2 N", "3 N"),
            (gauge.Name, gauge.Resolution.ToString(), gauge.Uncertainty.ToString())
        );
        Assert.Contains("S1 is put right.", See(desk), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2032.3.1\n", 2032, 3, 1)]
    [InlineData("2\n", 2031, 10, 7)]
    [InlineData("2031.13.1\n2031-12-1\n", 2031, 12, 1)]
    public void A_calibration_is_entered_as_a_day_or_taken_from_what_is_usual(string keys, int year, int month, int day)
    {
        Desk desk = Gauges();
        int index = 1 + _bench.Shop.Gauges.Values.OrderBy(g => g.Kind).ToList().FindIndex(g => g.Id == "M1");
        Assert.Contains("PAST", See(desk), StringComparison.Ordinal);

        foreach (string line in keys.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            if (desk.Top is GaugesScreen)
            {
                desk.Type(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{index}\n1\n"));
            }

            desk.Type(new string('\b', 12)).Type(line + "\n");
        }

        Assert.Equal(new DateOnly(year, month, day), _bench.Shop.Gauges["M1"].CalibratedUntil);
        Assert.DoesNotContain("PAST", See(desk), StringComparison.Ordinal);
    }

    [Fact]
    public void The_readout_is_set_up_by_numbers()
    {
        new Desk(SettingsMenu.Of(_bench.Session)).Type("1\n2\n1\n2\n2\n2\n2\n");

        Assert.Equal(
            new Readout(
                Units.Millimetre,
                0.005m,
                GrowsDeeper: false,
                ShowsDiameter: true,
                StepMode: true,
                Preset: true
            ),
            _bench.Shop.Readout
        );
    }

    [Fact]
    public void Enter_alone_keeps_the_readout_as_it_is()
    {
        Readout before = _bench.Shop.Readout!;
        new Desk(SettingsMenu.Of(_bench.Session)).Type("1\n\n\n\n\n\n\n");

        Assert.Equal(before, _bench.Shop.Readout);
    }

    [Fact]
    public void Bell_and_colours_are_switched_and_kept_for_the_next_start()
    {
        using Testing.TempFolder folder = new();
        ScreenSettings settings = ScreenSettings.From(folder["deep/screen.txt"]);
        ShopSession session = new(
            _bench.Store,
            _bench.Folder,
            _bench.Time,
            settings,
            _bench.Desk,
            (_, run) => new StandInRun(run)
        );
        Desk desk = new(SettingsMenu.Of(session));

        desk.Type("3\n");
        Assert.Contains("bell at a refusal: off", See(desk), StringComparison.Ordinal);
        desk.Type("4\n");

        ScreenSettings next = ScreenSettings.From(folder["deep/screen.txt"]);
        Assert.Equal((false, false), (next.Bell, next.Colours));
        Assert.Equal((true, true), (ScreenSettings.From(folder["none.txt"]).Bell, ScreenSettings.From(null).Colours));
    }

    private Desk People() => new(new PeopleScreen(_bench.Session));

    private Desk Gauges() => new(new GaugesScreen(_bench.Session));

    private Desk Choose(string id)
    {
        int index = 1 + _bench.Shop.People.Values.OrderBy(p => p.Name).ToList().FindIndex(p => p.Id == id);
        return People().Type(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{index}\n"));
    }

    private string See(Desk desk) => desk.Picture(_bench.Look);
}
