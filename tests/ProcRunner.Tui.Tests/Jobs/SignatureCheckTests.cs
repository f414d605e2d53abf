using ProcRunner.People;
using ProcRunner.Procedures;
using ProcRunner.Runs;
using ProcRunner.Store.Local;
using ProcRunner.Testing;
using ProcRunner.Trail;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Tests.Jobs;

/// <summary>
/// Marks written past the program, in a trail whose chain holds: what a forger with the files, but without the PINs, could
/// do. Each is found at its entry, which is the second.
/// </summary>
public sealed class SignatureCheckTests : IDisposable
{
    private readonly TempFolder _folder = new();
    private readonly LocalStore _store;
    private readonly JobRun _job;
    private readonly At _sign;

    public SignatureCheckTests()
    {
        _store = DemoShop.Open(_folder["shop"], "tests").Store!;
        _job = DemoShop.OpenJob(_store, DemoShop.Stamp).Run!;
        _sign = new At(_job.State.Plan.Steps.First(s => s.Work is StepWork.Sign).Index, At.Head);
    }

    public void Dispose()
    {
        _store.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public void A_true_sign_off_holds()
    {
        SignatureCheck check = Check(Signed("vale", "vale"));

        Assert.Empty(check.Faults);
        Assert.Equal(1, check.Count);
    }

    [Fact]
    public void A_signature_with_another_key_is_found() =>
        Assert.Contains("isn't made with their key", FaultOf(Signed("vale", "finch")), StringComparison.Ordinal);

    [Fact]
    public void A_signature_over_something_else_is_found() =>
        Assert.Contains(
            "covers something else",
            FaultOf(Signed("vale", "vale") with { Covers = Digest.Of("else"u8).ToString() }),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_name_that_the_shop_book_does_not_know_is_found()
    {
        RunEvent.SignedOff signed = Signed("vale", "vale");

        Assert.Contains(
            "nobody's whom the shop book knew",
            FaultOf(signed with { Mark = signed.Mark with { Person = "ghost" } }),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_trainee_without_a_lead_beside_is_found() =>
        Assert.Contains("no lead signed beside", FaultOf(Signed("finch", "finch")), StringComparison.Ordinal);

    [Fact]
    public void A_concession_by_somebody_who_is_no_lead_is_found()
    {
        Mark mark = Made("vale", "vale", m => SignedBytes.OfWay(_job.State, _sign, WayKind.Concession, "so what", m));

        Assert.Contains(
            "needs a lead",
            FaultOf(new RunEvent.Conceded(_sign, "so what", mark)),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_sign_off_after_the_signer_had_left_is_found()
    {
        Assert.Null(new ShopDesk(_store, Machine.Entropy, 10).Retire("vale", "moss", "135790"));

        Assert.Contains("after they had left", FaultOf(Signed("vale", "vale")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_sign_off_stays_good_when_the_signer_leaves_later()
    {
        Append(Signed("vale", "vale"));
        Assert.Null(new ShopDesk(_store, Machine.Entropy, 10).Retire("vale", "moss", "135790"));

        Assert.Empty(SignatureCheck.Of(_store.Reader, _job.State.JobId).Faults);
    }

    [Fact]
    public void A_sign_off_stays_good_when_the_PIN_is_reset_or_changed_later()
    {
        ShopDesk desk = new(_store, Machine.Entropy, 10);
        Append(Signed("vale", "vale"));
        Assert.Null(desk.ResetPin("vale", "8642", "moss", "135790"));
        Assert.Null(desk.ChangePin("vale", "8642", "8643"));
        Assert.Null(desk.ChangePin("moss", "135790", "246801"));

        Assert.Empty(SignatureCheck.Of(_store.Reader, _job.State.JobId).Faults);
        Assert.DoesNotContain(StoreCheck.All(_store.Reader), f => f.IsBroken);
    }

    [Fact]
    public void A_key_that_was_replaced_signs_nothing_more_even_under_an_older_state_of_the_book()
    {
        Person before = _store.Shop.People["vale"];
        RunEvent.SignedOff signed = Signed("vale", "vale");
        Assert.Null(new ShopDesk(_store, Machine.Entropy, 10).ResetPin("vale", "8642", "moss", "135790"));

        Assert.NotEqual(before.PublicKey, _store.Shop.People["vale"].PublicKey);
        Assert.Contains("isn't made with their key", FaultOf(signed), StringComparison.Ordinal);
    }

    private RunEvent.SignedOff Signed(string person, string key)
    {
        string covers = SignedBytes.CoversOf(_job.State, _sign).ToString();
        Mark mark = Made(person, key, m => SignedBytes.OfStage(_job.State, _sign, m));
        return new RunEvent.SignedOff(_sign, "measured", covers, mark, null);
    }

    private Mark Made(string person, string key, Func<Mark, byte[]> covered)
    {
        Mark mark = new(person, _store.Shop.People[person].Name, DateTimeOffset.UnixEpoch, "");
        string pin = DemoShop.People.Single(p => p.Id == key).Pin;
        var made = (SigningResult.Made)PersonKeys.TrySign(_store.Shop.People[key], pin, covered(mark));
        return mark with { Signature = Convert.ToBase64String([.. made.Signature]) };
    }

    private string FaultOf(RunEvent happened)
    {
        StoreFinding fault = Assert.Single(Check(happened).Faults);
        Assert.True(fault.IsBroken);
        Assert.Equal(2, fault.Entry);
        return fault.Text;
    }

    private SignatureCheck Check(RunEvent happened)
    {
        Append(happened);
        return SignatureCheck.Of(_store.Reader, _job.State.JobId);
    }

    private void Append(RunEvent happened)
    {
        EntryDraft draft = new("vale", [RunEventFormat.Write(_job.State.Plan, happened)], Anchor.SignedOff);
        Assert.IsType<AppendResult.Written>(_store.Append(_job.State.JobId, draft));
        Assert.DoesNotContain(StoreCheck.Job(_store.Reader, _job.State.JobId), f => f.IsBroken);
    }
}
