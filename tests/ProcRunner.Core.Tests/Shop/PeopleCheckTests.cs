using ProcRunner.People;
using ProcRunner.Shop;
using ProcRunner.Trail;

namespace ProcRunner.Tests.Shop;

/// <summary>Every change to the shop's people is signed for; whatever isn't is found at its entry.</summary>
public sealed class PeopleCheckTests
{
    [Fact]
    public void A_whole_life_holds()
    {
        BookOfPeople book = Life();

        Assert.Empty(book.Findings);
        Assert.Empty(book.Shop.Uncertified());
        Assert.Equal(2, book.Shop.FormerKeys.Count);
        Assert.NotNull(book.Shop.People["p1"].RetiredAt);
        Assert.Equal(("Another Name", Role.Trainee), (book.Shop.People["p2"].Name, book.Shop.People["p2"].Role));
    }

    [Fact]
    public void What_a_replaced_key_vouched_for_stays_good()
    {
        BookOfPeople book = BookOfPeople
            .WithLead()
            .AddPerson("lead2", Role.Lead, "222222")
            .AddPerson("p1", Role.Operator, "1234", "lead2", "222222");
        Person signer = book.Shop.People["p1"];
        book.Add(book.Reset("lead2", "333333"));
        book.AddPerson("p3", Role.Operator, "4321", "lead2", "333333");

        Assert.Empty(book.Findings);
        Assert.Empty(book.Shop.Uncertified());
        Assert.Equal(["p1", "lead2", "lead1"], book.Shop.ChainOf(signer).Select(p => p.Id));
        Assert.NotEqual(book.Shop.People["lead2"].PublicKey, book.Shop.ChainOf(signer)[1].PublicKey);
    }

    [Fact]
    public void A_reset_of_the_first_leads_PIN_by_another_lead_holds()
    {
        BookOfPeople book = BookOfPeople.WithLead().AddPerson("lead2", Role.Lead, "222222");
        book.Add(book.Reset("lead1", "654321", "lead2", "222222"));
        book.AddPerson("p1", Role.Operator, "1234", "lead1", "654321");

        Assert.Empty(book.Findings);
        Assert.Empty(book.Shop.Uncertified());
        Assert.Equal("lead1", book.Shop.RootId);
    }

    [Fact]
    public void Each_act_put_in_without_its_signature_is_found()
    {
        SignedAct none = new("lead1", Convert.ToBase64String(new byte[70]));
        Person exchanged = BookOfPeople.Make("p1", Role.Lead, "999999", null);
        ShopEvent[] forged =
        [
            new ShopEvent.PersonLeft("p1", none),
            new ShopEvent.PersonChanged("p1", "N", Role.Lead, exchanged.Certificate, none),
            new ShopEvent.PinSet("p1", exchanged.WrappedKey, none with { By = "p1" }),
            new ShopEvent.PinReset("p1", exchanged.PublicKey, exchanged.WrappedKey, exchanged.Certificate, none),
            new ShopEvent.IdleSet(0, none),
            new ShopEvent.ContactSet("a lane that isn't ours", none),
            new ShopEvent.PersonRetired("p1"),
            new ShopEvent.PinChanged("p1", exchanged.WrappedKey),
            new ShopEvent.PersonAdded(exchanged),
            new ShopEvent.PersonAdded(exchanged with { Id = "p9", CertifiedBy = "p9" }),
            new ShopEvent.PersonAdded(exchanged with { Id = "p9", CertifiedBy = "lead1" }),
            new ShopEvent.PersonAdded(exchanged with { Id = "p9", CertifiedBy = "p1" }),
            new ShopEvent.FirstLeadAnew(exchanged with { Id = "p9", CertifiedBy = "p9" }, "r", none with { By = "p9" }),
        ];
        foreach (ShopEvent happened in forged)
        {
            BookOfPeople book = BookOfPeople.WithLead().AddPerson("p1", Role.Operator, "1234").Add(happened);
            PeopleFinding finding = Assert.Single(book.Findings);
            Assert.True(finding.IsBroken, finding.Text);
            Assert.Equal(3, finding.Entry);
        }
    }

    [Fact]
    public void Each_act_by_somebody_who_might_not_is_found()
    {
        BookOfPeople Book() =>
            BookOfPeople.WithLead().AddPerson("p1", Role.Operator, "1234").AddPerson("lead2", Role.Lead, "222222");

        BookOfPeople operators = Book();
        operators.Add(operators.Left("lead2", "p1", "1234"));
        BookOfPeople others = Book();
        others.Add(
            others.Signed(
                "lead1",
                BookOfPeople.LeadPin,
                a => new ShopEvent.PinSet("p1", others.Shop.Root!.WrappedKey, a)
            )
        );
        BookOfPeople gone = Book();
        gone.Add(gone.Left("lead2"));
        gone.Add(gone.Left("p1", "lead2", "222222"));

        Assert.All(
            new[] { operators, others, gone },
            book => Assert.Contains("might not", Assert.Single(book.Findings).Text, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void An_act_moved_or_repeated_is_found()
    {
        BookOfPeople book = BookOfPeople.WithLead().AddPerson("p1", Role.Operator, "1234");
        ShopEvent trainee = book.Changed("p1", "Name of p1", Role.Trainee);
        book.Add(trainee);
        book.Add(book.Changed("p1", "Name of p1", Role.Operator));
        Assert.Empty(book.Findings);

        book.Add(trainee);
        Assert.Equal(5, Assert.Single(book.Findings).Entry);
    }

    [Fact]
    public void Every_changed_field_of_every_act_is_found()
    {
        BookOfPeople life = Life();
        for (int i = 0; i < life.Entries.Count; i++)
        {
            Json.Map stored = life.Entries[i].Entry.Events[^1];
            foreach (KeyValuePair<string, Json> field in stored.Items.Where(p => p.Key is not "e" and not "wrapped"))
            {
                BookOfPeople forged = new();
                foreach ((TrailEntry entry, _) in life.Entries.Take(i))
                {
                    forged.AddStored([.. entry.Events]);
                }

                forged.AddStored([.. life.Entries[i].Entry.Events[..^1], With(stored, field.Key, Other(field))]);
                Assert.Contains(forged.Findings, f => f.IsBroken && f.Entry == i + 1);
            }
        }
    }

    [Fact]
    public void A_shop_that_began_anew_says_so_for_ever_and_what_was_signed_before_holds()
    {
        BookOfPeople book = BookOfPeople.WithLead().AddPerson("p1", Role.Operator, "1234");
        Person before = book.Shop.People["p1"];
        book.Add(book.Anew("lead9", "999999", "the only lead left; nobody knows the PIN"));
        book.AddPerson("p2", Role.Operator, "4321", "lead9", "999999");
        book.Add(book.Reset("lead1", "111111", "lead9", "999999"));

        PeopleFinding finding = Assert.Single(book.Findings);
        Assert.False(finding.IsBroken);
        Assert.Equal(3, finding.Entry);
        Assert.Contains("not vouched for by the one before", finding.Text, StringComparison.Ordinal);
        Assert.Contains("nobody knows the PIN", finding.Text, StringComparison.Ordinal);
        Assert.Empty(book.Shop.Uncertified());
        Assert.Equal(["lead1", "lead9"], book.Shop.Roots.Select(r => r.Lead.Id));
        Assert.Equal(book.Shop.Roots[0].Lead.PublicKey, book.Shop.ChainOf(before)[^1].PublicKey);
        Assert.Equal(book.Shop.Roots[1].Lead.PublicKey, book.Shop.ChainOf(book.Shop.People["p2"])[^1].PublicKey);
    }

    [Fact]
    public void A_new_first_lead_takes_nobodys_place()
    {
        BookOfPeople book = BookOfPeople.WithLead();
        string key = book.Shop.People["lead1"].PublicKey;
        book.Add(book.Anew("lead1", "999999", "r"));

        Assert.True(Assert.Single(book.Findings).IsBroken);
        Assert.Equal(key, book.Shop.People["lead1"].PublicKey);
    }

    // A person added, another lead, a PIN set and reset, name and role changed, somebody left, the setting, wrong PINs.
    private static BookOfPeople Life()
    {
        BookOfPeople book = BookOfPeople
            .WithLead()
            .AddPerson("p1", Role.Operator, "1234")
            .AddPerson("lead2", Role.Lead, "222222");
        book.AddPerson("p2", Role.Operator, "4321", "lead2", "222222");
        book.Add(book.Changed("p2", "Another Name", Role.Trainee));
        book.Add(book.Signed("p1", "1234", act => new ShopEvent.PinSet("p1", book.Shop.People["p1"].WrappedKey, act)));
        book.Add(book.Reset("p1", "9876", "lead2", "222222"));
        book.Add(book.Reset("lead2", "333333"));
        book.Add(book.Signed("lead2", "333333", act => new ShopEvent.IdleSet(10, act)));
        book.Add(book.Signed("lead2", "333333", act => new ShopEvent.ContactSet("a yard, no telephone", act)));
        return book.Add(book.Left("p1", "lead2", "333333"));
    }

    private static Json.Map With(Json.Map map, string key, Json value) =>
        Json.MapOf([.. map.Items.Select(p => (p.Key, p.Key == key ? value : p.Value))]);

    private static Json Other(KeyValuePair<string, Json> field) =>
        field switch
        {
            { Key: "role" } => new Json.Text(((Json.Text)field.Value).Value == "lead" ? "operator" : "lead"),
            { Value: Json.Whole whole } => new Json.Whole(whole.Value + 1),
            { Value: Json.Text { Value.Length: < 40 } text } => new Json.Text(text.Value + "x"),
            { Value: Json.Text text } => new Json.Text(text.Value[..^6] + "AAAA" + text.Value[^2..]),
            _ => throw new ArgumentOutOfRangeException(nameof(field)),
        };
}
