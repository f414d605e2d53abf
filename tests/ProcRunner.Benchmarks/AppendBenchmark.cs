using System.Globalization;
using Microsoft.Data.Sqlite;
using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Benchmarks;

/// <summary>
/// An entry of one file, from the draft to the flushed line, against SQLite (write-ahead log, synchronous=FULL) that
/// inserts and commits the same bytes. By turns, some of one and some of the other, on the same disk.
/// </summary>
internal static class AppendBenchmark
{
    private const double Goal = 1.2;
    private const int Turns = 600;
    private const int PerTurn = 4;

    public static Result Run(DemoRun demo, string folder)
    {
        using LocalStore store = Opened(
            StoreFolder.Found(
                Path.Combine(folder, "store"),
                "benchmark",
                "benchmark",
                TimeProvider.System,
                Random.Shared.NextBytes
            )
        );
        string job = ((AppendResult.Written)store.OpenJob("B-1", [], new("", demo.Entries[0].Events))).Entry.Of;
        using SqliteConnection database = new($"Data Source={Path.Combine(folder, "lines.db")}");
        database.Open();
        Execute(database, "PRAGMA journal_mode=WAL");
        Execute(database, "PRAGMA synchronous=FULL");
        Execute(database, "CREATE TABLE entries (n INTEGER PRIMARY KEY, line BLOB NOT NULL)");
        using SqliteCommand insert = database.CreateCommand();
        insert.CommandText = "INSERT INTO entries (n, line) VALUES ($n, $line)";
        SqliteParameter number = insert.Parameters.Add("$n", SqliteType.Integer);
        SqliteParameter blob = insert.Parameters.Add("$line", SqliteType.Blob);
        insert.Prepare();

        List<double> ours = [];
        List<double> theirs = [];
        for (int turn = 0; turn < Turns; turn++)
        {
            List<TrailEntry> written = [];
            for (int i = 0; i < PerTurn; i++)
            {
                EntryDraft draft = new(
                    "vale",
                    demo.Entries[1 + (((turn * PerTurn) + i) % (demo.Entries.Length - 2))].Events
                );
                AppendResult? result = null;
                Note(ours, turn, Timing.Of(() => result = store.Append(job, draft)));
                written.Add(((AppendResult.Written)result!).Entry);
            }

            foreach (TrailEntry entry in written)
            {
                byte[] line = TrailLine.Encode(entry);
                Note(
                    theirs,
                    turn,
                    Timing.Of(() =>
                    {
                        (number.Value, blob.Value) = (entry.Sequence, line);
                        insert.ExecuteNonQuery();
                    })
                );
            }
        }

        double ratio = Timing.Quantile(ours, 0.5) / Timing.Quantile(theirs, 0.5);
        return new(
            "an entry to acknowledged on disk, to SQLite (WAL, synchronous=FULL) inserting the same bytes",
            "at most 1.2 of its median",
            string.Create(
                CultureInfo.InvariantCulture,
                $"ratio of medians {ratio:0.00}; {ours.Count} each; store {InWords(ours)}; SQLite {database.ServerVersion} {InWords(theirs)}"
            ),
            ratio <= Goal
        );
    }

    // The first turns warm both up.
    private static void Note(List<double> times, int turn, double time)
    {
        if (turn >= 100)
        {
            times.Add(time);
        }
    }

    private static string InWords(List<double> times) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"median {Timing.Quantile(times, 0.5) * 1000:0} µs, 95 of 100 within {Timing.Quantile(times, 0.95) * 1000:0} µs"
        );

    private static LocalStore Opened(StoreOpening opening) =>
        opening is StoreOpening.Opened opened ? opened.Store : throw new IOException(opening.InWords());

    private static void Execute(SqliteConnection database, string sql)
    {
        using SqliteCommand command = new(sql, database);
        command.ExecuteNonQuery();
    }
}
