using System.Collections.Immutable;
using LiteDB;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>
/// The searchable copy of the trails: LiteDB with the collections jobs, parts and values. Nothing hangs on it: it is
/// checked before each use, and made again from the trails when it is missing, damaged or behind.
/// </summary>
/// <remarks>
/// LiteDB neither flushes a commit nor sums its pages, and two programs that open one file lose each other's data unseen. So
/// nobody keeps it open: it is used under <c>index.lock</c>, for one batch or one query, and <c>index.sum</c> holds the
/// length and SHA-256 of the whole file, written after each batch.
/// </remarks>
public sealed class SearchIndex
{
    private readonly IndexFile _file;

    internal SearchIndex(StorePaths paths, IndexProjection projection) => _file = new(paths, projection);

    /// <summary>Told how many jobs of how many have been read while the index is brought up to the trails.</summary>
    public Action<int, int>? Progress
    {
        get => _file.Progress;
        set => _file.Progress = value;
    }

    /// <summary>What went wrong with the index last, null when nothing did.</summary>
    public string? Trouble => _file.Trouble;

    /// <summary>Brings the index up to the trails; false when that fails, with <see cref="Trouble"/> saying why.</summary>
    public bool TryRefresh() => _file.TryRefresh();

    /// <summary>All jobs, the latest activity first; empty when the index can't be used.</summary>
    public ImmutableArray<IndexedJob> All() => Search("");

    /// <summary>
    /// The jobs whose stamp, customer, part, lot or proof code holds the text, whatever the case; latest activity first. A
    /// proof code is found however it is typed.
    /// </summary>
    public ImmutableArray<IndexedJob> Search(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        string wanted = (ProofCode.TryRead(text, out _)?.ToString() ?? text).ToUpperInvariant();
        return OrEmpty(
            Use<ImmutableArray<IndexedJob>>(database =>
                [
                    .. database
                        .GetCollection(IndexDocuments.Jobs)
                        .FindAll()
                        .Where(job => job[IndexDocuments.Words].AsString.Contains(wanted, StringComparison.Ordinal))
                        .OrderByDescending(job => job[IndexDocuments.LastActivity].AsInt64)
                        .Select(job => IndexDocuments.Read(database, job)),
                ]
            )
        );
    }

    /// <summary>The job with exactly this stamp, null when there is none.</summary>
    public IndexedJob? ByStamp(string stamp) =>
        Use(database =>
            database.GetCollection(IndexDocuments.Jobs).FindOne("$.stamp = @0", stamp) is { } job
                ? IndexDocuments.Read(database, job)
                : null
        );

    /// <summary>Every value of a characteristic, in all jobs.</summary>
    public ImmutableArray<(string JobId, IndexedValue Value)> ValuesOf(string name) =>
        OrEmpty(
            Use<ImmutableArray<(string, IndexedValue)>>(database =>
                [
                    .. database
                        .GetCollection(IndexDocuments.Values)
                        .Find(BsonExpression.Create("$.name = @0", name))
                        .Select(value => (value[IndexDocuments.Job].AsString, IndexDocuments.ReadValue(value))),
                ]
            )
        );

    private static ImmutableArray<T> OrEmpty<T>(ImmutableArray<T> found) => found.IsDefault ? [] : found;

    private T? Use<T>(Func<LiteDatabase, T> query) => _file.Use(query);
}
