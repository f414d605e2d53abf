using System.Text;
using ProcRunner.Trail;

namespace ProcRunner.Tests.Trail;

public sealed class DigestTests
{
    [Theory]
    // FIPS 180-4 example messages, NIST "Secure Hash Standard: examples with intermediate values" (SHA256.pdf); the empty
    // message: NIST CAVP SHA256ShortMsg, Len = 0.
    [InlineData("", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855")]
    [InlineData("abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")]
    [InlineData(
        "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1"
    )]
    public void Is_SHA_256(string message, string expected) =>
        Assert.Equal(expected, Digest.Of(Encoding.ASCII.GetBytes(message)).ToString());

    // FIPS 180-4 example: one million times "a".
    [Fact]
    public void Is_SHA_256_of_a_million_letters() =>
        Assert.Equal(
            "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0",
            Digest.Of(Encoding.ASCII.GetBytes(new string('a', 1_000_000))).ToString()
        );

    [Fact]
    public void Reads_its_own_form_and_no_other()
    {
        var digest = Digest.Of("abc"u8);
        string text = digest.ToString();

        Assert.Equal(digest, Digest.Parse(text));
        Assert.Equal(digest, Digest.Parse(Encoding.ASCII.GetBytes(text)));
        Assert.Null(Digest.Parse(text.ToUpperInvariant()));
        Assert.Null(Digest.Parse(text.AsSpan(1)));
        Assert.Null(Digest.Parse(text[..63] + "g"));
        Assert.Equal(new string('0', 64), Digest.Zero.ToString());
    }
}
