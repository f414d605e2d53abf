namespace ProcRunner.Runs;

/// <summary>What has changed in a run since its outlook last followed it. Says where, never what it comes to.</summary>
internal sealed class Changes(Plan plan)
{
    // Whoever folds a long trail and asks for no outlook meanwhile has it made anew.
    private const int Most = 256;
    private readonly List<At> _places = [];
    private readonly bool[] _conditions = new bool[plan.Positions.Count + 1];

    /// <summary>True when there is so much, or of such a kind, that all is to be looked at.</summary>
    public bool IsEverything { get; private set; } = true;

    /// <summary>Steps at positions of which something changed; one may stand here more than once.</summary>
    public IReadOnlyList<At> Places => _places;

    /// <summary>True when a value went stale or was taken again.</summary>
    public bool Staleness { get; private set; }

    /// <summary>True when nothing has changed.</summary>
    public bool IsNothing { get; private set; }

    /// <summary>True when something changed that conditions at a position, or of the head, read.</summary>
    public bool IsAskedAnew(int position) => _conditions[position + 1];

    /// <summary>Of a step at a position something changed.</summary>
    public void At(At at)
    {
        IsNothing = false;
        if (_places.Count < Most)
        {
            _places.Add(at);
            return;
        }

        IsEverything = true;
    }

    /// <summary>What a step at a position gives, decides or finds changed, or no longer counts.</summary>
    public void Said(At at)
    {
        if (plan.ConditionsHear(at.Step))
        {
            _conditions[0] = true;
            _conditions[at.Position + 1] = true;
            IsEverything |= at.Position == Runs.At.Head || plan.ConditionsCompare;
        }
    }

    /// <summary>A value went stale or was taken again.</summary>
    public void Stale() => (IsNothing, Staleness) = (false, true);

    /// <summary>Anything may have changed.</summary>
    public void All() => (IsNothing, IsEverything) = (false, true);

    /// <summary>Everything has been looked at.</summary>
    public void Clear()
    {
        _places.Clear();
        Array.Clear(_conditions);
        (IsNothing, IsEverything, Staleness) = (true, false, false);
    }
}
