using Xunit.Abstractions;
using ProcRunner.Practice.Operators;
using ProcRunner.Shop;

namespace ProcRunner.Practice.Tests;

public class FewHeadsTests(ITestOutputHelper output)
{
    [Fact]
    public void A_few()
    {
        ShopState shop = PracticeShop.Of(Demo.Setup);
        for (ulong i = 0; i < 12; i++)
        {
            var clock = System.Diagnostics.Stopwatch.StartNew();
            HeadOutcome head = ModelOperator.Play(Demo.Binding, shop, 1, i);
            output.WriteLine($"{head.End} {head.Why} {head.Entries} {clock.ElapsedMilliseconds} ms");
            foreach ((ProcRunner.Runs.At at, string way) in head.Refusals)
            {
                output.WriteLine($"    {Demo.Binding.Plan.NameOf(at)}: {way}");
            }

            foreach (Held held in head.Values.Where(h => h.IsOut || h.Moved))
            {
                output.WriteLine($"  !! {Demo.Binding.Plan.Procedure.Characteristics[held.Characteristic].Name} {held}");
            }
        }
    }
}
