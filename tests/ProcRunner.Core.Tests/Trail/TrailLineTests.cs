using System.Text;
using ProcRunner.Trail;

namespace ProcRunner.Tests.Trail;

public sealed class TrailLineTests
{
    [Fact]
    public void Writes_one_known_line()
    {
        TrailEntry entry = SampleTrail.Entry(1, Digest.Zero) with
        {
            Offset = TimeSpan.Zero,
            Opening = null,
            Anchor = Anchor.None,
            Events = [Json.MapOf(("e", new Json.Text("note")))],
        };
        string line = Encoding.UTF8.GetString(TrailLine.Encode(entry));

        // Both digests were made with hashlib of Python 3: of "book", and of the text before the tab.
        Assert.Equal(
            """{"at":"2026-11-25T01:02:04.456Z","bench":"bench \"1\"","book":{"d":"92719fe0cf8cd51592af31ee8a5736d79f7273777fa3f7b70bfe993a4cd32180","n":7},"by":"p1","ev":[{"e":"note"}],"n":1,"of":"mzxw6ytboiaaaaaaaaaaaaaaaa","off":"+00:00","prev":"0000000000000000000000000000000000000000000000000000000000000000","v":1}"""
                + "\t559bb04cd9461b84bc81e4bab4a1bcf4a5f626f5a8769de25cdf027ef4c72f36\n",
            line
        );
    }

    [Fact]
    public void Reads_back_what_it_wrote()
    {
        foreach (int minutes in (int[])[0, 330, -570, 840, -840])
        {
            TrailEntry entry = SampleTrail.Entry(1, Digest.Zero) with { Offset = TimeSpan.FromMinutes(minutes) };
            (TrailEntry? read, TrailFault? fault) = TrailLine.Decode(TrailLine.Encode(entry));

            Assert.Null(fault);
            Assert.Equal(entry, read);
            Assert.Equal(entry.At, read!.At);
            Assert.Equal(entry.Opening, read.Opening);
            Assert.Equal(entry.Events[0], read.Events[0]);
            Assert.Equal(entry.Offset, read.Offset);
        }
    }

    [Fact]
    public void Cuts_the_time_to_milliseconds()
    {
        TrailEntry entry = SampleTrail.Entry(2, Digest.Zero);
        TrailEntry? read = TrailLine.Decode(TrailLine.Encode(entry with { At = entry.At.AddTicks(9_999) })).Entry;

        Assert.Equal(entry.At, read!.At);
    }

    [Theory]
    [InlineData("{}", TrailFault.WrongShape)]
    [InlineData("[]", TrailFault.WrongShape)]
    [InlineData("{\"a\":1,\"v\":2}", TrailFault.UnknownVersion)]
    [InlineData("{\"a\":1,\"v\":1}", TrailFault.WrongShape)]
    [InlineData("{\"v\":1,\"a\":1}", TrailFault.NotCanonical)]
    [InlineData("{\"v\":1} ", TrailFault.NotCanonical)]
    public void Tells_what_is_wrong_with_a_line_whose_digest_is_right(string json, TrailFault expected) =>
        Assert.Equal(expected, TrailLine.Decode(Sealed(json)).Fault);

    [Theory]
    // Each replacement leaves canonical JSON with a right digest; only the meaning is off.
    [InlineData("2026-11-25T01:02:05.456Z", "2026-11-31T01:02:05.456Z")]
    [InlineData("2026-11-25T01:02:05.456Z", "2026-11-25T24:02:05.456Z")]
    [InlineData("2026-11-25T01:02:05.456Z", "2026-11-25 01:02:05.456Z")]
    [InlineData("2026-11-25T01:02:05.456Z", "2026-11-25T01:02:05Z")]
    [InlineData("+05:30", "-00:00")]
    [InlineData("+05:30", "+14:01")]
    [InlineData("+05:30", "05:30")]
    [InlineData("\"n\":2,", "\"n\":0,")]
    [InlineData("\"n\":7}", "\"n\":-7}")]
    [InlineData("\"n\":2,", "\"n\":\"2\",")]
    [InlineData("\"by\":\"p1\",", "")]
    [InlineData("\"by\":\"p1\",", "\"by\":\"p1\",\"bz\":1,")]
    [InlineData("\"n\":2,\"of\"", "\"mark\":\"whatever\",\"n\":2,\"of\"")]
    [InlineData("0000000000000000000000000000000000000000000000000000000000000000", "00")]
    [InlineData("\"prev\":", "\"opens\":{\"stamp\":\"1\",\"texts\":[]},\"prev\":")]
    public void Refuses_a_field_that_can_not_be(string part, string instead)
    {
        string line = Encoding.UTF8.GetString(TrailLine.Encode(SampleTrail.Entry(2, Digest.Zero)));
        string json = line[..line.IndexOf('\t', StringComparison.Ordinal)];
        Assert.Contains(part, json, StringComparison.Ordinal);

        Assert.Equal(
            TrailFault.WrongShape,
            TrailLine.Decode(Sealed(json.Replace(part, instead, StringComparison.Ordinal))).Fault
        );
    }

    private static byte[] Sealed(string json) =>
        Encoding.UTF8.GetBytes($"{json}\t{Digest.Of(Encoding.UTF8.GetBytes(json))}\n");
}
