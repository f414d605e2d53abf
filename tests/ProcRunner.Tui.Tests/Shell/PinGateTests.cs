using Microsoft.Extensions.Time.Testing;
using ProcRunner.People;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Shell;
using ProcRunner.Tui.Tests.Host;
using ProcRunner.Tui.Tests.Shop;

namespace ProcRunner.Tui.Tests.Shell;

/// <summary>Wrong PINs are written down and waited for, whatever is restarted or done to the clock.</summary>
public sealed class PinGateTests : IDisposable
{
    private readonly ShopBench _bench = new();

    private PinGate Gate => _bench.Desk.Pins;

    private Person Vale => _bench.Shop.People["vale"];

    public void Dispose() => _bench.Dispose();

    [Fact]
    public void The_third_wrong_PIN_in_a_row_begins_a_wait_and_the_right_one_is_not_tried_in_it()
    {
        Assert.DoesNotContain("again in", Wrong(), StringComparison.Ordinal);
        Assert.DoesNotContain("again in", Wrong(), StringComparison.Ordinal);
        Assert.Contains("again in 30 seconds", Wrong(), StringComparison.Ordinal);

        long written = _bench.Shop.Mark.Sequence;
        Assert.Contains("After 3 wrong PINs", Try("2468"), StringComparison.Ordinal);
        Assert.Equal(written, _bench.Shop.Mark.Sequence);

        _bench.Time.Advance(TimeSpan.FromSeconds(30));
        Assert.Equal("", Try("2468"));
        Assert.Empty(_bench.Shop.WrongPins);
        Assert.DoesNotContain("again in", Wrong(), StringComparison.Ordinal);
    }

    [Fact]
    public void Nobody_else_waits()
    {
        Wait(8);

        Assert.Equal(TimeSpan.FromMinutes(15), Gate.Left("vale"));
        Assert.Equal(TimeSpan.Zero, Gate.Left("moss"));
        using UnlockedKey? moss = Gate.TryUnlock(_bench.Shop.People["moss"], ShopBench.LeadPin, out _);
        Assert.NotNull(moss);
    }

    [Fact]
    public void A_reset_by_a_lead_ends_the_wait()
    {
        Wait(8);
        Assert.Null(_bench.Desk.ResetPin("vale", "8642", "moss", ShopBench.LeadPin));

        Assert.Equal("", Try("8642"));
    }

    [Fact]
    public void A_restart_shortens_nothing()
    {
        Wait(6);
        _bench.Time.Advance(TimeSpan.FromMinutes(1));

        Assert.Equal(TimeSpan.FromMinutes(3), Restarted(_bench.Time).Left("vale"));
    }

    [Fact]
    public void A_clock_set_back_while_the_program_runs_changes_nothing()
    {
        Wait(6);
        WallClock clock = new();
        clock.Set(_bench.Time.GetUtcNow() - clock.GetUtcNow());
        PinGate gate = Restarted(clock);
        clock.Set(TimeSpan.FromDays(-30));
        clock.Pass(TimeSpan.FromMinutes(1));

        Assert.Equal(TimeSpan.FromMinutes(3), gate.Left("vale"));
    }

    [Fact]
    public void A_clock_set_back_before_a_restart_begins_the_wait_anew_and_makes_it_no_longer()
    {
        Wait(6);
        FakeTimeProvider back = new(_bench.Time.GetUtcNow().AddDays(-30));
        PinGate restarted = Restarted(back);
        Assert.Equal(TimeSpan.FromMinutes(4), restarted.Left("vale"));

        back.Advance(TimeSpan.FromMinutes(4));
        Assert.Equal(TimeSpan.Zero, restarted.Left("vale"));
    }

    [Fact]
    public void Where_a_wrong_PIN_cant_be_written_down_no_PIN_is_tried()
    {
        PinGate gate = new(() => _bench.Shop, (_, _) => new AppendResult.Failed("the disk is full"), _bench.Time);

        Assert.Null(gate.TryUnlock(Vale, "1111", out string fault));
        Assert.StartsWith("NOT WRITTEN: the disk is full", fault, StringComparison.Ordinal);
        Wrong();
        Assert.Null(gate.TryUnlock(Vale, "2468", out string same));
        Assert.Equal(fault, same);
    }

    [Fact]
    public void Wrong_PINs_stand_in_the_shop_book_without_what_was_typed()
    {
        Wrong();
        Wrong();
        Try("2468");

        string book = File.ReadAllText(Path.Combine(_bench.Folder, "book.trail"));
        Assert.Contains("""{"e":"pin refused","id":"vale","tries":2}""", book, StringComparison.Ordinal);
        Assert.Contains("""{"e":"pin accepted","id":"vale"}""", book, StringComparison.Ordinal);
    }

    private PinGate Restarted(TimeProvider time) =>
        new(() => _bench.Shop, (_, _) => new AppendResult.Refused(""), time);

    private string Wrong() => Try("1111");

    private string Try(string pin)
    {
        using UnlockedKey? key = Gate.TryUnlock(Vale, pin, out string fault);
        Assert.Equal(fault.Length == 0, key is not null);
        return fault;
    }

    private void Wait(int wrong)
    {
        for (int i = 0; i < wrong; i++)
        {
            _bench.Time.Advance(PinWait.Longest);
            Wrong();
        }
    }
}
