using ProcRunner.Practice.Operators;
using ProcRunner.Shop;

namespace ProcRunner.Practice.Tests;

/// <summary>A few heads of the demo procedure from opening to release, through the real decisions.</summary>
public class FewHeadsTests
{
    [Fact]
    public void Heads_come_to_an_end_and_nothing_moves_unasked()
    {
        ShopState shop = PracticeShop.Of(Demo.Setup);
        for (ulong i = 0; i < 6; i++)
        {
            HeadOutcome head = ModelOperator.Play(Demo.Binding, shop, 1, i);

            Assert.True(head.End == HeadEnd.Released, $"head {i}: {head.End} {head.Why}");
            Assert.NotEmpty(head.Values);
            Assert.All(
                head.Values,
                held => Assert.True(!held.IsOut || (held.WasPassed && !held.Moved), held.ToString())
            );
        }
    }
}
