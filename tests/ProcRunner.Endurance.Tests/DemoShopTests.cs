using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Testing;

namespace ProcRunner.Endurance.Tests;

public class DemoShopTests
{
    /// <summary>As a kill leaves it that falls between the making of the store and its first entry.</summary>
    [Fact]
    public void A_demo_shop_that_was_made_without_its_people_gets_them_at_the_next_start()
    {
        using TempFolder folder = new();
        string store = folder["shop"];
        StoreOpening made = StoreFolder.Found(
            store,
            "Demo shop (invented)",
            "test",
            TimeProvider.System,
            Random.Shared.NextBytes
        );
        Assert.IsType<StoreOpening.Opened>(made).Store.Dispose();

        using LineProgram run = new(BuiltProgram.Path, store);
        Assert.Equal(0, run.End().Status);

        ShopState shop = StoreReader.Open(store).Reader!.ReadShop().Shop;
        Assert.Equal(3, shop.People.Count);
        Assert.NotEmpty(shop.Gauges);
    }
}
