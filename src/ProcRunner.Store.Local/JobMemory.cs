namespace ProcRunner.Store.Local;

/// <summary>
/// What a program remembers of the index from one question to the next: the jobs themselves, and which trails went on since.
/// </summary>
/// <param name="looksOnce">
/// True where this program alone writes the trails and says which job went on, or asks only once: then the trails are looked
/// through once, and jobs are found in memory from there on.
/// </param>
internal sealed class JobMemory(bool looksOnce)
{
    private readonly Lock _marks = new();
    private readonly HashSet<string> _unseen = new(StringComparer.Ordinal);
    private readonly HashSet<string> _unwritten = new(StringComparer.Ordinal);
    private JobCatalogue? _catalogue;
    private string? _sum;
    private bool _isLookedThrough;

    /// <summary>True when no other trail than those that were said to have gone on can be another than in the index.</summary>
    public bool KnowsWhatWentOn => _isLookedThrough;

    /// <summary>The jobs, where they can be asked without the file; else null.</summary>
    public JobCatalogue? Trusted => looksOnce ? _catalogue : null;

    /// <summary>A job's trail went on. Whoever writes an entry doesn't wait for an index that is being made.</summary>
    public void WentOn(string jobId)
    {
        lock (_marks)
        {
            _unseen.Add(jobId);
            _unwritten.Add(jobId);
        }
    }

    /// <summary>The jobs that went on and aren't in the file yet; they count as written from now on.</summary>
    public string[] TakeUnwritten() => Taken(_unwritten);

    /// <summary>The jobs that went on and aren't in memory yet; they count as seen from now on.</summary>
    public string[] TakeUnseen() => Taken(_unseen);

    /// <summary>The sum of the file before it is used: another than it was left with means that somebody else wrote it.</summary>
    public void Found(string? sum)
    {
        if (sum is null || sum != _sum)
        {
            _isLookedThrough = false;
            _catalogue = looksOnce ? _catalogue : null;
        }

        _sum = sum;
    }

    /// <summary>The file is up to the trails, with this sum.</summary>
    public void BroughtUp(string? sum) => (_sum, _isLookedThrough) = (sum, looksOnce);

    /// <summary>Something failed: the trails are looked through again.</summary>
    public void Doubt() => _isLookedThrough = false;

    /// <summary>Takes a job as it now is; null when it is gone.</summary>
    public void Renew(string jobId, IndexedJob? job)
    {
        if (job is null)
        {
            _catalogue?.Remove(jobId);
        }
        else
        {
            _catalogue?.Put(job);
        }
    }

    /// <summary>The jobs; read once, after that they follow what is written.</summary>
    public JobCatalogue Jobs(Func<IEnumerable<IndexedJob>> read)
    {
        if (_catalogue is null)
        {
            TakeUnseen();
            JobCatalogue catalogue = new();
            foreach (IndexedJob job in read())
            {
                catalogue.Put(job);
            }

            _catalogue = catalogue;
        }

        return _catalogue;
    }

    private string[] Taken(HashSet<string> marks)
    {
        lock (_marks)
        {
            string[] taken = [.. marks];
            marks.Clear();
            return taken;
        }
    }
}
