using System.Globalization;
using System.Text;
using ProcRunner.Trail;

namespace ProcRunner.Tests.Trail;

/// <summary>The short code of a closed-out job.</summary>
public sealed class ProofCodeTests
{
    private const string Alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";

    /// <summary>RFC 4648 section 10, test vectors of BASE32 (padding left out).</summary>
    [Theory]
    [InlineData("", "")]
    [InlineData("f", "MY")]
    [InlineData("fo", "MZXQ")]
    [InlineData("foo", "MZXW6")]
    [InlineData("foob", "MZXW6YQ")]
    [InlineData("fooba", "MZXW6YTB")]
    [InlineData("foobar", "MZXW6YTBOI")]
    public void Base32_is_that_of_the_RFC(string text, string expected) =>
        Assert.Equal(expected, Base32.Encode(Encoding.ASCII.GetBytes(text)));

    /// <summary>
    /// The digest is FIPS 180-4's of "abc" (FIPS 180-2 appendix B.1); its first 15 bytes went through coreutils' base32:
    /// <c>printf abc | sha256sum | head -c 30 | xxd -r -p | base32</c>.
    /// </summary>
    [Fact]
    public void The_first_24_characters_are_those_of_a_base32_tool()
    {
        var code = ProofCode.Of(Digest.Of("abc"u8));
        Assert.Equal("XJ4BNP4PAHH6UQKBIDPF3LRC", code.Letters[..24]);
        Assert.Equal(5, code.ToString().Split('-').Length);
        Assert.All(code.ToString().Split('-'), group => Assert.Equal(5, group.Length));
    }

    /// <summary>The check character worked out another way: long multiplication of polynomials, then division.</summary>
    [Fact]
    public void The_check_character_is_the_sum_of_the_formula()
    {
        foreach (ProofCode code in Some())
        {
            int sum = 0;
            for (int i = 0; i < 24; i++)
            {
                sum ^= Times(Alphabet.IndexOf(code.Letters[i], StringComparison.Ordinal), Power(24 - i));
            }

            Assert.Equal(Alphabet[sum], code.Letters[24]);
        }
    }

    /// <summary>Each place, each other character: 775 a code.</summary>
    [Fact]
    public void Every_wrong_character_is_caught()
    {
        foreach (ProofCode code in Some())
        {
            char[] letters = code.Letters.ToCharArray();
            for (int i = 0; i < letters.Length; i++)
            {
                char right = letters[i];
                foreach (char wrong in Alphabet.Where(c => c != right))
                {
                    letters[i] = wrong;
                    Assert.Null(ProofCode.TryRead(new(letters), out string fault));
                    Assert.Contains("check character", fault, StringComparison.Ordinal);
                }

                letters[i] = right;
            }
        }
    }

    /// <summary>Any two that differ, neighbours or not.</summary>
    [Fact]
    public void Every_two_that_changed_places_are_caught()
    {
        foreach (ProofCode code in Some())
        {
            for (int i = 0; i < ProofCode.Length; i++)
            {
                for (int j = i + 1; j < ProofCode.Length; j++)
                {
                    char[] letters = code.Letters.ToCharArray();
                    (letters[i], letters[j]) = (letters[j], letters[i]);
                    ProofCode? read = ProofCode.TryRead(new(letters), out _);
                    Assert.Equal(letters[i] == letters[j], read is not null);
                }
            }
        }
    }

    /// <summary>Case, spaces, hyphens and look-alikes are forgiven.</summary>
    [Fact]
    public void Typing_is_forgiving()
    {
        foreach (ProofCode code in Some())
        {
            string written = code.ToString();
            string[] typed =
            [
                written,
                written.ToLowerInvariant(),
                written.Replace('-', ' '),
                $"  {code.Letters}\t",
                string.Join(' ', code.Letters.AsEnumerable()),
                written.Replace('O', '0').Replace('I', '1').Replace('B', '8'),
            ];
            Assert.All(typed, text => Assert.Equal(code, ProofCode.TryRead(text, out _)));
        }
    }

    /// <summary>What is wrong is said in words.</summary>
    [Theory]
    [InlineData(null, "this has 0")]
    [InlineData("ABC", "this has 3")]
    [InlineData("AAAAA-AAAAA-AAAAA-AAAAA-AAAAAA", "this has 26")]
    [InlineData("AAAAA-9", "\"9\" stands in no proof code")]
    [InlineData("\u001b[31m", "U+001B")]
    [InlineData("AAAAA-ÄAAAA", "U+00C4")]
    public void A_fault_is_said_in_words(string? text, string says)
    {
        Assert.Null(ProofCode.TryRead(text, out string fault));
        Assert.Contains(says, fault, StringComparison.Ordinal);
        Assert.True(fault.All(c => c is >= ' ' and <= '~'));
    }

    /// <summary>A code belongs to one digest; another within the first 120 bits is another code.</summary>
    [Fact]
    public void A_code_matches_its_digest_alone()
    {
        byte[] bytes = new byte[32];
        Digest.Of("closing"u8).CopyTo(bytes);
        var code = ProofCode.Of(Digest.FromBytes(bytes));
        Assert.True(code.Matches(Digest.FromBytes(bytes)));
        for (int bit = 0; bit < 120; bit++)
        {
            bytes[bit / 8] ^= (byte)(1 << (bit % 8));
            Assert.False(code.Matches(Digest.FromBytes(bytes)));
            bytes[bit / 8] ^= (byte)(1 << (bit % 8));
        }
    }

    private static IEnumerable<ProofCode> Some() =>
        Enumerable
            .Range(0, 40)
            .Select(i => ProofCode.Of(Digest.Of(Encoding.ASCII.GetBytes(i.ToString(CultureInfo.InvariantCulture)))))
            .Append(ProofCode.Of(Digest.Zero));

    private static int Power(int exponent) => Enumerable.Repeat(2, exponent).Aggregate(1, Times);

    private static int Times(int a, int b)
    {
        int product = 0;
        for (int bit = 0; bit < 5; bit++)
        {
            product ^= ((b >> bit) & 1) == 0 ? 0 : a << bit;
        }

        for (int bit = 9; bit >= 5; bit--)
        {
            product ^= ((product >> bit) & 1) == 0 ? 0 : 0b100101 << (bit - 5);
        }

        return product;
    }
}
