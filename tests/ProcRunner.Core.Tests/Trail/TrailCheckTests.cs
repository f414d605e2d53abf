using FsCheck.Xunit;
using ProcRunner.Trail;

namespace ProcRunner.Tests.Trail;

public sealed class TrailCheckTests
{
    [Fact]
    public void A_trail_holds()
    {
        List<byte[]> lines = SampleTrail.Lines(5);
        var seen = new List<long>();
        TrailVerdict verdict = TrailCheck.Verify(
            SampleTrail.Bytes(lines),
            SampleTrail.Job,
            (entry, _) => seen.Add(entry.Sequence)
        );

        Assert.Equal(new TrailVerdict.Holds(5, TrailLine.DigestOf(lines[4])), verdict);
        Assert.Equal([1, 2, 3, 4, 5], seen);
    }

    [Fact]
    public void Every_single_byte_changed_to_every_other_value_is_found_at_its_entry()
    {
        List<byte[]> lines = SampleTrail.Lines(3);
        byte[] trail = SampleTrail.Bytes(lines);
        int entry = 1;
        int end = lines[0].Length;
        for (int at = 0; at < trail.Length; at++)
        {
            if (at == end)
            {
                end += lines[entry].Length;
                entry++;
            }

            byte original = trail[at];
            for (int change = 1; change < 256; change++)
            {
                trail[at] = (byte)(original ^ change);
                var broken = Assert.IsType<TrailVerdict.Broken>(TrailCheck.Verify(trail));
                Assert.Equal(entry, broken.Entry);
                Assert.NotEmpty(broken.InWords());
            }

            trail[at] = original;
        }
    }

    [Fact]
    public void A_trail_cut_anywhere_inside_a_line_is_torn_there()
    {
        List<byte[]> lines = SampleTrail.Lines(3);
        byte[] trail = SampleTrail.Bytes(lines);
        int start = lines[0].Length + lines[1].Length;
        for (int length = start + 1; length < trail.Length; length++)
        {
            Assert.Equal(
                new TrailVerdict.Broken(3, TrailFault.TornTail, start),
                TrailCheck.Verify(trail.AsSpan(0, length))
            );
        }
    }

    [Fact]
    public void Lines_removed_repeated_moved_replaced_or_swapped_are_found()
    {
        List<byte[]> a = SampleTrail.Lines(4);
        List<byte[]> other = SampleTrail.Lines(4, "aaaaaaaaaaaaaaaaaaaaaaaaaa");
        byte[] second = TrailLine.Encode(SampleTrail.Entry(2, TrailLine.DigestOf(a[0])) with { Operator = "p2" });

        AssertBroken(2, TrailFault.Missing, a[0], a[2], a[3]);
        AssertBroken(1, TrailFault.Missing, a[1], a[2], a[3]);
        AssertBroken(2, TrailFault.OutOfOrder, a[0], a[0], a[1]);
        AssertBroken(2, TrailFault.Missing, a[0], a[2], a[1], a[3]);
        AssertBroken(4, TrailFault.OutOfOrder, a[0], a[1], a[2], a[1], a[3]);
        AssertBroken(3, TrailFault.Unchained, a[0], second, a[2], a[3]);
        AssertBroken(3, TrailFault.AnotherTrail, a[0], a[1], other[2], a[3]);
        AssertBroken(3, TrailFault.NotAnEntry, a[0], a[1], "\n"u8.ToArray(), a[2]);
        AssertBroken(1, TrailFault.Empty);
        Assert.Equal(
            new TrailVerdict.Broken(1, TrailFault.AnotherTrail, 0),
            TrailCheck.Verify(SampleTrail.Bytes(other), SampleTrail.Job)
        );
    }

    [Fact]
    public void Nothing_stands_after_the_entry_that_closed_the_job_out()
    {
        List<byte[]> lines = SampleTrail.Lines(1);
        byte[] closing = TrailLine.Encode(
            SampleTrail.Entry(2, TrailLine.DigestOf(lines[0])) with
            {
                Anchor = Anchor.ClosedOut,
            }
        );
        byte[] after = TrailLine.Encode(SampleTrail.Entry(3, TrailLine.DigestOf(closing)));

        AssertBroken(3, TrailFault.AfterCloseOut, lines[0], closing, after);
        Assert.IsType<TrailVerdict.Holds>(TrailCheck.Verify(SampleTrail.Bytes([lines[0], closing])));
    }

    [Fact]
    public void A_stream_gives_the_same_verdict_in_pieces_of_any_size()
    {
        byte[] trail = SampleTrail.Bytes(SampleTrail.Lines(2000));
        TrailVerdict whole = TrailCheck.Verify(trail);
        foreach (int size in (int[])[1 << 20, 4096, 97])
        {
            using var pieces = new PiecewiseStream(trail, size);
            Assert.Equal(whole, TrailCheck.Verify(pieces));
        }

        trail[^2] ^= 1;
        using var altered = new PiecewiseStream(trail, 1000);
        Assert.Equal(TrailCheck.Verify(trail), TrailCheck.Verify(altered));
    }

    [Fact]
    public void A_line_without_end_is_refused_in_bounded_memory()
    {
        using var endless = new PiecewiseStream(new byte[TrailLine.MaxLength * 2], 1 << 20);

        Assert.Equal(new TrailVerdict.Broken(1, TrailFault.TooLong, 0), TrailCheck.Verify(endless));
    }

    [Property(MaxTest = 1000)]
    public bool Any_bytes_give_a_verdict(byte[] bytes) => TrailCheck.Verify(bytes) is TrailVerdict.Broken { Entry: 1 };

    private static void AssertBroken(long entry, TrailFault fault, params byte[][] lines)
    {
        var broken = Assert.IsType<TrailVerdict.Broken>(TrailCheck.Verify(SampleTrail.Bytes(lines)));
        Assert.Equal((entry, fault), (broken.Entry, broken.Fault));
        Assert.NotEmpty(broken.InWords());
    }

    private sealed class PiecewiseStream(byte[] bytes, int size) : MemoryStream(bytes)
    {
        public override int Read(byte[] buffer, int offset, int count) =>
            base.Read(buffer, offset, Math.Min(count, size));
    }
}
