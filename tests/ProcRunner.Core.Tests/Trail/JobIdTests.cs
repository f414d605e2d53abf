using ProcRunner.Trail;

namespace ProcRunner.Tests.Trail;

public sealed class JobIdTests
{
    // RFC 4648, section 10: BASE32("foobar") = "MZXW6YTBOI======", here with ten zero bytes behind it, in small letters.
    [Fact]
    public void Is_base32()
    {
        string id = JobId.New(bytes => "foobar"u8.CopyTo(bytes));

        Assert.Equal("mzxw6ytboi" + new string('a', 16), id);
        Assert.True(JobId.IsValid(id));
    }

    [Theory]
    [InlineData("")]
    [InlineData("shop")]
    [InlineData("../../../../../etc/passwdd")]
    [InlineData("MZXW6YTBOIAAAAAAAAAAAAAAAA")]
    public void Nothing_else_is_one(string text) => Assert.False(JobId.IsValid(text));
}
