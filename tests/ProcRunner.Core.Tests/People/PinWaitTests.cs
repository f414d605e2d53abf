using ProcRunner.People;

namespace ProcRunner.Tests.People;

public sealed class PinWaitTests
{
    [Theory]
    [InlineData(0, 0)]
    [InlineData(2, 0)]
    [InlineData(3, 30)]
    [InlineData(4, 60)]
    [InlineData(5, 120)]
    [InlineData(7, 480)]
    [InlineData(8, 900)]
    [InlineData(9, 900)]
    [InlineData(long.MaxValue, 900)]
    public void The_wait_grows_to_a_quarter_of_an_hour(long inARow, double seconds) =>
        Assert.Equal(seconds, PinWait.After(inARow).TotalSeconds);

    [Fact]
    public void No_clock_makes_a_wait_longer_than_it_ever_was()
    {
        WrongPins wrong = new(5, DateTimeOffset.UnixEpoch);

        Assert.Equal(TimeSpan.FromSeconds(120), PinWait.Left(wrong, TimeSpan.FromDays(-400)));
        Assert.Equal(TimeSpan.FromSeconds(90), PinWait.Left(wrong, TimeSpan.FromSeconds(30)));
        Assert.Equal(TimeSpan.Zero, PinWait.Left(wrong, TimeSpan.FromSeconds(120)));
        Assert.Equal(TimeSpan.Zero, PinWait.Left(wrong, TimeSpan.MaxValue));
        Assert.Equal(TimeSpan.Zero, PinWait.Left(null, TimeSpan.MinValue));
    }
}
