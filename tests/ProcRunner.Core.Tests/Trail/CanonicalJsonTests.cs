using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ProcRunner.Trail;

namespace ProcRunner.Tests.Trail;

public sealed class CanonicalJsonTests
{
    // RFC 8785, section 3.2.2, the "string" and "literals" members of its worked example with the expected output of
    // section 3.2.4. The "numbers" member holds fractions, which a trail never has.
    [Fact]
    public void Writes_the_strings_and_literals_of_the_RFCs_example()
    {
        Json value = Json.MapOf(
            ("string", new Json.Text("\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"/")),
            ("literals", Json.ListOf(Json.Nothing, new Json.Flag(true), new Json.Flag(false)))
        );

        Assert.Equal(
            """{"literals":[null,true,false],"string":"€$\u000f\nA'B\"\\\\\"/"}""",
            Encoding.UTF8.GetString(CanonicalJson.Write(value))
        );
    }

    // Public test data of the RFC's author, github.com/cyberphone/json-canonicalization, testdata/input and output
    // "structures.json"; 80 bytes and their SHA-256.
    [Fact]
    public void Writes_the_structures_of_the_RFC_authors_test_data()
    {
        Json value = Json.MapOf(
            (
                "1",
                Json.MapOf(
                    ("f", Json.MapOf(("f", new Json.Text("hi")), ("F", new Json.Whole(5)))),
                    ("\n", new Json.Whole(56))
                )
            ),
            ("10", Json.MapOf()),
            ("", new Json.Text("empty")),
            ("a", Json.MapOf()),
            ("111", Json.ListOf(Json.MapOf())),
            ("A", Json.MapOf())
        );
        byte[] written = CanonicalJson.Write(value);

        Assert.Equal(
            """{"":"empty","1":{"\n":56,"f":{"F":5,"f":"hi"}},"10":{},"111":[{}],"A":{},"a":{}}""",
            Encoding.UTF8.GetString(written)
        );
        Assert.Equal(80, written.Length);
        Assert.Equal("513d0c0f2524a8b295a9bbd982a37b7a000f1c5f915bf2d6d8cfdf75347bacad", Digest.Of(written).ToString());
        Assert.Equal(value, CanonicalJson.Read(written).Value);
    }

    // RFC 8785, section 3.2.3: its list of keys in their order; a surrogate pair sorts before U+FB33.
    [Fact]
    public void Sorts_keys_by_UTF16_code_units()
    {
        string[] sorted = ["\r", "1", "\u0080", "\u00f6", "\u20ac", "\ud83d\ude00", "\ufb33"];
        Json value = Json.MapOf([.. sorted.Reverse().Select(key => (key, Json.Nothing))]);
        byte[] written = CanonicalJson.Write(value);

        Assert.Equal(
            "{\"\\r\":null,\"1\":null,\"\u0080\":null,\"\u00f6\":null,\"\u20ac\":null,\"\ud83d\ude00\":null,\"\ufb33\":null}",
            Encoding.UTF8.GetString(written)
        );
        Assert.Equal(value, CanonicalJson.Read(written).Value);
    }

    // Public test data of the RFC's author, "weird.json": keys in their order; a surrogate pair sorts before U+FB33.
    [Fact]
    public void Sorts_the_weird_keys_of_the_RFC_authors_test_data()
    {
        string[] sorted = ["1", "</script>", "\u0080", "\u00f6", "\u20ac", "\ud83d\ude02", "\ufb33"];
        Json value = Json.MapOf([.. sorted.Reverse().Select(key => (key, Json.Nothing))]);

        Assert.Equal(
            "{" + string.Join(',', sorted.Select(key => $"\"{key}\":null")) + "}",
            Encoding.UTF8.GetString(CanonicalJson.Write(value))
        );
    }

    [Theory]
    // The rules are those of RFC 8785, section 3.2, and RFC 8259; the byte is where the text first departs from them.
    [InlineData("", JsonFaultKind.EndsTooSoon, 0)]
    [InlineData(" 1", JsonFaultKind.Unexpected, 0)]
    [InlineData("1 ", JsonFaultKind.MoreAfterEnd, 1)]
    [InlineData("01", JsonFaultKind.Unexpected, 0)]
    [InlineData("-0", JsonFaultKind.Unexpected, 0)]
    [InlineData("-", JsonFaultKind.EndsTooSoon, 0)]
    [InlineData("+1", JsonFaultKind.Unexpected, 0)]
    [InlineData("1.0", JsonFaultKind.NotAWholeNumber, 0)]
    [InlineData("1e2", JsonFaultKind.NotAWholeNumber, 0)]
    [InlineData("9007199254740992", JsonFaultKind.NumberTooLarge, 0)]
    [InlineData("-9007199254740992", JsonFaultKind.NumberTooLarge, 0)]
    [InlineData("99999999999999999999", JsonFaultKind.NumberTooLarge, 0)]
    [InlineData("tru", JsonFaultKind.EndsTooSoon, 3)]
    [InlineData("trux", JsonFaultKind.Unexpected, 3)]
    [InlineData("NaN", JsonFaultKind.Unexpected, 0)]
    [InlineData("""{"a":1,"a":2}""", JsonFaultKind.DuplicateKey, 7)]
    [InlineData("""{"b":1,"a":2}""", JsonFaultKind.KeysNotSorted, 7)]
    [InlineData("""{"a":1,}""", JsonFaultKind.Unexpected, 7)]
    [InlineData("""{"a" :1}""", JsonFaultKind.Unexpected, 4)]
    [InlineData("""{"a"}""", JsonFaultKind.Unexpected, 4)]
    [InlineData("""{"a":1""", JsonFaultKind.EndsTooSoon, 6)]
    [InlineData("[1,]", JsonFaultKind.Unexpected, 3)]
    [InlineData("[1 ,2]", JsonFaultKind.Unexpected, 2)]
    [InlineData("[", JsonFaultKind.EndsTooSoon, 1)]
    [InlineData("\"a", JsonFaultKind.EndsTooSoon, 2)]
    [InlineData("\"a\tb\"", JsonFaultKind.Unexpected, 2)]
    [InlineData(@"""\/""", JsonFaultKind.WrongEscape, 1)]
    [InlineData(@"""\u0041""", JsonFaultKind.WrongEscape, 1)]
    [InlineData(@"""\u001B""", JsonFaultKind.WrongEscape, 1)]
    [InlineData(@"""\u0009""", JsonFaultKind.WrongEscape, 1)]
    [InlineData(@"""\ud83d\ude00""", JsonFaultKind.WrongEscape, 1)]
    [InlineData(@"""\ud83d""", JsonFaultKind.WrongEscape, 1)]
    [InlineData("\uFEFF1", JsonFaultKind.Unexpected, 0)]
    public void Refuses_what_it_would_not_write(string text, JsonFaultKind kind, int offset)
    {
        JsonReading reading = CanonicalJson.Read(Encoding.UTF8.GetBytes(text));

        Assert.Null(reading.Value);
        Assert.Equal(new JsonFault(kind, offset), reading.Fault);
    }

    [Theory]
    // Unicode Standard, table 3-7 (well-formed UTF-8): a stray continuation, an overlong form, an encoded surrogate,
    // beyond U+10FFFF, a cut sequence.
    [InlineData(new byte[] { 0x22, 0x80, 0x22 }, 1)]
    [InlineData(new byte[] { 0x22, 0xC0, 0x80, 0x22 }, 1)]
    [InlineData(new byte[] { 0x22, 0x61, 0xED, 0xA0, 0x80, 0x22 }, 2)]
    [InlineData(new byte[] { 0x22, 0xF4, 0x90, 0x80, 0x80, 0x22 }, 1)]
    [InlineData(new byte[] { 0x22, 0xE2, 0x82, 0x22 }, 1)]
    public void Refuses_what_is_not_UTF8(byte[] bytes, int offset) =>
        Assert.Equal(new JsonFault(JsonFaultKind.NotUtf8, offset), CanonicalJson.Read(bytes).Fault);

    [Fact]
    public void Reads_32_containers_deep_and_no_deeper()
    {
        static byte[] Nested(int depth) => Encoding.UTF8.GetBytes(new string('[', depth) + new string(']', depth));

        Assert.Null(CanonicalJson.Read(Nested(32)).Fault);
        Assert.Equal(JsonFaultKind.TooDeep, CanonicalJson.Read(Nested(33)).Fault?.Kind);
        Assert.Equal(JsonFaultKind.TooDeep, CanonicalJson.Read(Nested(1_000_000)).Fault?.Kind);
        Json deep = Enumerable.Range(0, 33).Aggregate(Json.Nothing, (inner, _) => Json.ListOf(inner));
        Assert.Throws<ArgumentException>(() => CanonicalJson.Write(deep));
    }

    [Fact]
    public void Holds_no_number_from_two_to_the_53_on_and_no_lone_surrogate()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new Json.Whole(9_007_199_254_740_992));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Json.Whole(long.MinValue));
        Assert.Throws<ArgumentException>(() => new Json.Text("a\ud800"));
        Assert.Throws<ArgumentException>(() => Json.MapOf(("\udc00", Json.Nothing)));
        Assert.Throws<ArgumentException>(() => Json.MapOf(("a", Json.Nothing), ("a", Json.Nothing)));
    }

    [Property(MaxTest = 500)]
    public Property What_was_written_is_read_back_equal() =>
        Prop.ForAll(JsonValues.Arbitrary, value => value.Equals(CanonicalJson.Read(CanonicalJson.Write(value)).Value));

    [Property(MaxTest = 2000)]
    public bool Any_bytes_give_a_value_that_writes_them_again_or_a_fault(byte[] bytes) => IsReadOrRefused(bytes);

    [Property(MaxTest = 1000)]
    public Property Any_changed_byte_gives_a_value_that_writes_it_again_or_a_fault() =>
        Prop.ForAll(
            JsonValues.Arbitrary,
            ArbMap.Default.ArbFor<int>(),
            ArbMap.Default.ArbFor<byte>(),
            (value, place, other) =>
            {
                byte[] bytes = CanonicalJson.Write(value);
                bytes[(int)(Math.Abs((long)place) % bytes.Length)] = other;
                return IsReadOrRefused(bytes);
            }
        );

    private static bool IsReadOrRefused(byte[] bytes)
    {
        JsonReading reading = CanonicalJson.Read(bytes);
        return reading.Value is { } value
            ? reading.Fault is null && CanonicalJson.Write(value).AsSpan().SequenceEqual(bytes)
            : reading.Fault is { } fault && fault.Offset >= 0 && fault.Offset <= bytes.Length;
    }
}
