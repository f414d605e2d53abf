using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Work;

public class ShopResultTests
{
    [Fact]
    public void A_default_result_is_no_result() => Assert.NotNull(Known.Fault(default(ShopResult<int>)));

    [Fact]
    public void A_fault_passes_through_what_would_come_next()
    {
        ShopResult<int> fault = new ShopFault("bore", "0 mm", "it must be above 0");

        Assert.Equal(
            "bore: 0 mm was read; it must be above 0",
            Known.Fault(fault.Then<int>(one => one + 1)).ToString()
        );
        Assert.Equal(3, Known.Value(((ShopResult<int>)2).Then<int>(one => one + 1)));
    }
}
