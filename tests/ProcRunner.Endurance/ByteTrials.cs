using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Endurance;

/// <summary>
/// Random damage to a large trail and its shop book, a whole check of the store after each: found, unless all that happened
/// is that entries were cut off at a line's end: of the trail after the last one that the book knows, of the book after the
/// last one that a trail names.
/// </summary>
internal sealed class ByteTrials(string folder, int entries, int seed)
{
    private const int AnchorEvery = 500;
    private readonly Random _random = new(seed);

    /// <summary>Runs so many trials.</summary>
    /// <returns>How many were found, and how many fell under the promise's exception.</returns>
    /// <exception cref="InvalidDataException">One went unseen.</exception>
    public (int Found, int Excepted) Run(int trials)
    {
        string id = Make();
        string[] paths = [Path.Combine(folder, "jobs", id + ".trail"), Path.Combine(folder, "book.trail")];
        byte[][] good = [.. paths.Select(File.ReadAllBytes)];
        (int lastAnchored, int lastNamed) = LastKnown(id);
        (int found, int excepted) = (0, 0);
        for (int i = 0; i < trials; i++)
        {
            int which = _random.Next(4) == 0 ? 1 : 0;
            (string how, byte[] damaged) = Damage(good[which]);
            if (damaged.AsSpan().SequenceEqual(good[which]))
            {
                i--;
                continue;
            }

            File.WriteAllBytes(paths[which], damaged);
            StoreReader reader = StoreReader.Open(folder).Reader!;
            bool seen = StoreCheck.All(reader).Any(finding => finding.IsBroken);
            bool mayHide = CutsOnlyTheEnd(good[which], damaged, which == 0 ? lastAnchored : lastNamed);
            if (!seen && !mayHide)
            {
                throw new InvalidDataException($"Trial {i}, seed {seed}: {how} in {paths[which]} went unseen.");
            }

            (found, excepted) = seen ? (found + 1, excepted) : (found, excepted + 1);
            File.WriteAllBytes(paths[which], good[which]);
        }

        return (found, excepted);
    }

    private string Make()
    {
        using LocalStore store = (
            (StoreOpening.Opened)
                StoreFolder.Found(
                    folder,
                    "Made-up shop",
                    "trials",
                    TimeProvider.System,
                    System.Security.Cryptography.RandomNumberGenerator.Fill
                )
        ).Store;
        string id = ((AppendResult.Written)store.OpenJob("1", [], Draft(0))).Entry.Of;
        for (int i = 1; i < entries; i++)
        {
            _ = (AppendResult.Written)store.Append(id, Draft(i));
        }

        return id;
    }

    private static EntryDraft Draft(int number)
    {
        string text = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"reading {number}: 0.0520 in");
        Anchor anchor = number % AnchorEvery == AnchorEvery - 1 ? Anchor.SignedOff : Anchor.None;
        return new("p1", [Json.MapOf(("e", new Json.Text("noted")), ("text", new Json.Text(text)))], anchor);
    }

    // The last entry of the trail that the book knows, and the last of the book that the trail names.
    private (int Anchored, int Named) LastKnown(string id)
    {
        StoreReader reader = StoreReader.Open(folder).Reader!;
        return (
            (int)reader.ReadShop().Shop.Jobs[id].LastAnchor!.Sequence,
            (int)reader.ReadTrail(id).Entries.Max(line => line.Entry.Book.Sequence)
        );
    }

    private static bool CutsOnlyTheEnd(byte[] good, byte[] damaged, int lastAnchored) =>
        damaged.Length > 0
        && good.AsSpan().StartsWith(damaged)
        && damaged[^1] == '\n'
        && damaged.AsSpan().Count((byte)'\n') >= lastAnchored;

    private (string How, byte[] Bytes) Damage(byte[] good)
    {
        int at = _random.Next(good.Length);
        int length = Math.Min(_random.Next(1, _random.Next(2) == 0 ? 3 : 5_000), good.Length - at);
        byte[] piece = good[at..(at + length)];
        byte[] without = [.. good.AsSpan(0, at), .. good.AsSpan(at + length)];
        int to = _random.Next(without.Length + 1);
        (int start, int end) = LineAt(good, at);
        (int start2, int end2) = LineAt(good, to % good.Length);
        switch (_random.Next(10))
        {
            case 0:
                return ("bytes removed", without);
            case 1:
                return ("bytes moved", [.. without.AsSpan(0, to), .. piece, .. without.AsSpan(to)]);
            case 2:
                return ("bytes repeated", [.. good.AsSpan(0, at), .. piece, .. good.AsSpan(at)]);
            case 3:
                return ("cut off", good[..at]);
            case 4:
                return ("cut off at a line", good[..start]);
            case 5:
                return ("a line removed", [.. good.AsSpan(0, start), .. good.AsSpan(end)]);
            case 6:
                return (
                    "a line repeated elsewhere",
                    [.. good.AsSpan(0, start2), .. good.AsSpan(start, end - start), .. good.AsSpan(start2)]
                );
            case 7:
                byte[] exchanged = [.. good];
                good.AsSpan(start2, Math.Min(end2 - start2, end - start)).CopyTo(exchanged.AsSpan(start));
                return ("a line written over another", exchanged);
            case 8:
                byte[] rubbish = [.. good];
                _random.NextBytes(rubbish.AsSpan(at, length));
                return ("rubbish written", rubbish);
            default:
                byte[] flipped = [.. good];
                flipped[at] ^= (byte)(1 << _random.Next(8));
                return ("a bit flipped", flipped);
        }
    }

    private static (int Start, int End) LineAt(byte[] good, int at)
    {
        int start = good.AsSpan(0, at).LastIndexOf((byte)'\n') + 1;
        return (start, good.AsSpan(at).IndexOf((byte)'\n') + at + 1);
    }
}
