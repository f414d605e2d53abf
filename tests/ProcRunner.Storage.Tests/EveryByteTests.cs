using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Tests.Storage;

/// <summary>
/// Every byte of a trail of twenty entries and of its shop book: changed, removed, put in, moved; every cut; every pair of
/// lines exchanged. Found each time, but for what the promises leave out: entries cut off after the last that the book knows.
/// </summary>
public sealed class EveryByteTests
{
    private const int LastAnchored = 15;
    private const int Entries = 20;

    /// <summary>What a byte is changed to: each bit flipped, the bytes that mean something in a line, and rubbish.</summary>
    private static readonly byte[] Values = [0, (byte)'\t', (byte)'\n', (byte)'"', (byte)'0', (byte)'}', 0x7f, 0xff];

    [Fact]
    public void Every_changed_removed_inserted_or_moved_byte_breaks_the_trail_or_the_book_it_is_in()
    {
        using var folder = new StoreInFolder();
        string id = WithTwentyEntries(folder);
        foreach (string of in (string[])[id, JobId.Shop])
        {
            byte[] good = File.ReadAllBytes(folder.Paths.Trail(of));
            Assert.IsType<TrailVerdict.Holds>(TrailCheck.Verify(good, of));
            Parallel.For(
                0,
                good.Length,
                at =>
                {
                    int entry = good.AsSpan(0, at).Count((byte)'\n') + 1;
                    foreach ((string how, byte[] altered) in Altered(good, at))
                    {
                        var broken = TrailCheck.Verify(altered, of) as TrailVerdict.Broken;
                        Assert.True(broken is not null, $"{of}: byte {at} {how} is not found");

                        // A byte moved backward breaks the entry that it was moved into, one put in after a line the next.
                        Assert.True(
                            broken.Entry == entry
                                || (how == "moved to the start" && broken.Entry == 1)
                                || (good[at] == '\n' && broken.Entry == entry + 1),
                            $"{of}: byte {at} of entry {entry} {how} is said to be in entry {broken.Entry}"
                        );
                    }
                }
            );
        }
    }

    [Fact]
    public void A_check_of_the_store_finds_one_of_each_at_every_byte()
    {
        using var folder = new StoreInFolder();
        string id = WithTwentyEntries(folder);
        Assert.Empty(folder.Broken());
        foreach (string of in (string[])[id, JobId.Shop])
        {
            string path = folder.Paths.Trail(of);
            byte[] good = File.ReadAllBytes(path);
            for (int at = 0; at < good.Length; at++)
            {
                (string how, byte[] altered) = Altered(good, at).ElementAt(at % 4 * 3);
                File.WriteAllBytes(path, altered);
                Assert.True(folder.Broken().Any(found => found.Of == of), $"{of}: byte {at} {how} is not found");
            }

            File.WriteAllBytes(path, good);
        }
    }

    [Fact]
    public void Every_cut_is_found_but_between_entries_that_the_book_doesn_t_know()
    {
        using var folder = new StoreInFolder();
        string id = WithTwentyEntries(folder);
        byte[] good = File.ReadAllBytes(folder.Paths.Trail(id));
        ShopJob job = folder.Reader().ReadShop().Shop.Jobs[id];
        int unseen = 0;
        for (int length = 0; length < good.Length; length++)
        {
            using var cut = new MemoryStream(good, 0, length);
            TrailSummary trail = TrailCheck.Summarise(cut, id);
            bool found = trail.Verdict is TrailVerdict.Broken || AnchorComparison.Compare(job, trail).Any();
            int whole = good.AsSpan(0, length).Count((byte)'\n');
            bool betweenEntries = length > 0 && good[length - 1] == '\n';
            Assert.True(found != (betweenEntries && whole >= LastAnchored), $"cut to {length} bytes, {whole} entries");
            unseen += found ? 0 : 1;
        }

        Assert.Equal(Entries - LastAnchored, unseen);
    }

    [Fact]
    public void Every_line_removed_repeated_or_exchanged_with_any_other_is_found()
    {
        using var folder = new StoreInFolder();
        string id = WithTwentyEntries(folder);
        foreach (string of in (string[])[id, JobId.Shop])
        {
            byte[][] lines = LinesOf(File.ReadAllBytes(folder.Paths.Trail(of)));
            for (int i = 0; i < lines.Length; i++)
            {
                AssertBroken(of, [.. lines[..i], lines[i], .. lines[i..]], $"{i} repeated");
                if (i < lines.Length - 1)
                {
                    AssertBroken(of, [.. lines[..i], .. lines[(i + 1)..]], $"{i} removed");
                }

                for (int j = 0; j < i; j++)
                {
                    byte[][] exchanged = [.. lines];
                    (exchanged[i], exchanged[j]) = (exchanged[j], exchanged[i]);
                    AssertBroken(of, exchanged, $"{i} and {j} exchanged");
                }
            }
        }
    }

    private static void AssertBroken(string of, byte[][] lines, string how) =>
        Assert.True(TrailCheck.Verify([.. lines.SelectMany(l => l)], of) is TrailVerdict.Broken, $"{of}: {how}");

    // In this order, so that every third is another kind.
    private static IEnumerable<(string How, byte[] Bytes)> Altered(byte[] good, int at)
    {
        for (int bit = 0; bit < 3; bit++)
        {
            yield return ("changed", With(good, at, (byte)(good[at] ^ (1 << bit))));
        }

        yield return ("removed", [.. good.AsSpan(0, at), .. good.AsSpan(at + 1)]);
        foreach (byte value in (byte[])[good[at], (byte)'x'])
        {
            yield return ("with another put in", [.. good.AsSpan(0, at), value, .. good.AsSpan(at)]);
        }

        byte[] without = [.. good.AsSpan(0, at), .. good.AsSpan(at + 1)];
        yield return ("with another put in", [.. good.AsSpan(0, at), 0, .. good.AsSpan(at)]);
        if (at > 0)
        {
            yield return ("moved to the start", [good[at], .. without]);
        }
        else
        {
            yield return ("changed", With(good, at, (byte)'x'));
        }

        yield return ("changed", With(good, at, (byte)(good[at] ^ 8)));
        int end = good.AsSpan(at).IndexOf((byte)'\n') + at;
        bool stays = end <= at + 1 || good[at] == good[at + 1];
        yield return stays
            ? ("changed", With(good, at, (byte)(good[at] ^ 16)))
            : ("moved on by one", With(With(good, at, good[at + 1]), at + 1, good[at]));
        for (int bit = 4; bit < 8; bit++)
        {
            yield return ("changed", With(good, at, (byte)(good[at] ^ (1 << bit))));
        }

        foreach (byte value in Values.Where(v => v != good[at]))
        {
            yield return ("changed", With(good, at, value));
        }
    }

    private static byte[] With(byte[] good, int at, byte value)
    {
        byte[] altered = [.. good];
        altered[at] = value;
        return altered;
    }

    private static byte[][] LinesOf(byte[] bytes)
    {
        List<byte[]> lines = [];
        for (int from = 0; from < bytes.Length; )
        {
            int length = bytes.AsSpan(from).IndexOf((byte)'\n') + 1;
            lines.Add(bytes[from..(from + length)]);
            from += length;
        }

        return [.. lines];
    }

    // Twenty entries, the fifteenth the last that the shop book knows.
    private static string WithTwentyEntries(StoreInFolder folder)
    {
        string id = folder.WithOneJob();
        using LocalStore store = folder.Open();
        for (int entry = 4; entry <= Entries; entry++)
        {
            Anchor anchor = entry is 8 or LastAnchored ? Anchor.SignedOff : Anchor.None;
            StoreInFolder.Written(store.Append(id, StoreInFolder.Draft($"reading {entry}", anchor)));
        }

        return id;
    }
}
