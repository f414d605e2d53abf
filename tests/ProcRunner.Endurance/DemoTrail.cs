using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Endurance;

/// <summary>The one trail in a demo shop's store, as it is on disk.</summary>
/// <param name="Bytes">The file.</param>
/// <param name="Entries">Its entries without what differs from run to run.</param>
/// <param name="Verdict">Whether it holds; null when there is no trail yet.</param>
internal sealed record DemoTrail(byte[] Bytes, IReadOnlyList<string> Entries, TrailVerdict? Verdict)
{
    // Of an entry: time, offset, digests, ids. Of an event: what a signature covers (a digest), the signature, its time.
    private static readonly string[] OfEntry = [TrailKeys.At, TrailKeys.Offset, TrailKeys.Previous, TrailKeys.Of];
    private static readonly string[] OfEvent = ["covers", "signature", "time"];

    /// <summary>Reads a store's trail; empty when there is none.</summary>
    public static DemoTrail Read(string store)
    {
        (StoreReader? reader, _) = StoreReader.Open(store);
        string[] jobs = reader is null ? [] : [.. reader.JobIds()];
        if (jobs is not [var job])
        {
            return jobs.Length == 0
                ? new([], [], null)
                : throw new InvalidDataException($"{jobs.Length} jobs in {store}");
        }

        TrailReading trail = reader!.ReadTrail(job);
        byte[] bytes = File.ReadAllBytes(Path.Combine(store, "jobs", job + ".trail"));
        return new(bytes, [.. trail.Entries.Select(line => Bare(line.Entry))], trail.Verdict);
    }

    private static string Bare(TrailEntry entry)
    {
        byte[] line = TrailLine.Encode(entry);
        int tab = Array.IndexOf(line, (byte)'\t');
        Json.Map map = (Json.Map)CanonicalJson.Read(line.AsSpan(0, tab)).Value!;
        IEnumerable<(string, Json)> kept = map
            .Items.Where(pair => !OfEntry.Contains(pair.Key) && pair.Key != TrailKeys.Book)
            .Select(pair => (pair.Key, pair.Key == TrailKeys.Events ? WithoutSignatures(pair.Value) : pair.Value));
        return System.Text.Encoding.UTF8.GetString(CanonicalJson.Write(Json.MapOf([.. kept])));
    }

    private static Json WithoutSignatures(Json value) =>
        value switch
        {
            Json.Map map => Json.MapOf([
                .. map
                    .Items.Where(pair => !OfEvent.Contains(pair.Key))
                    .Select(pair => (pair.Key, WithoutSignatures(pair.Value))),
            ]),
            Json.List list => Json.ListOf([.. list.Items.Select(WithoutSignatures)]),
            _ => value,
        };
}
