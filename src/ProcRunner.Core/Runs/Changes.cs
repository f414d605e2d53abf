namespace ProcRunner.Runs;

/// <summary>What has changed in a run since its outlook last followed it. Says where, never what it comes to.</summary>
internal sealed class Changes(Plan plan)
{
    // Whoever folds a long trail and asks for no outlook meanwhile has it made anew.
    private const int Most = 256;
    private readonly List<At> _places = [];
    private readonly HashSet<(int Condition, int Position)> _conditions = [];

    /// <summary>True when there is so much, or of such a kind, that all is to be looked at.</summary>
    public bool IsEverything { get; private set; }

    /// <summary>True when a value went stale or was taken again.</summary>
    public bool OfStaleness { get; private set; }

    /// <summary>True when nothing has changed.</summary>
    public bool IsNothing => !IsEverything && !OfStaleness && _places.Count == 0;

    /// <summary>Steps at positions of which something changed; one may stand here more than once.</summary>
    public IReadOnlyList<At> Places => _places;

    /// <summary>Conditions, by index, that may come to something else at a position.</summary>
    public IReadOnlyCollection<(int Condition, int Position)> Conditions => _conditions;

    /// <summary>Of a step at a position something changed: what it said or gave may no longer count, or count now.</summary>
    public void Add(At at)
    {
        if (IsEverything || _places.Count == Most)
        {
            IsEverything = true;
            return;
        }

        _places.Add(at);
        foreach (int condition in plan.Conditions.Hearing(at.Step))
        {
            bool everywhere = at.Position == At.Head || plan.Conditions.Compares(condition);
            for (int position = At.Head; position < plan.Positions.Count; position++)
            {
                if (everywhere || position == at.Position)
                {
                    _ = _conditions.Add((condition, position));
                }
            }
        }
    }

    /// <summary>A value went stale or was taken again.</summary>
    public void AddStaleness() => OfStaleness = true;

    /// <summary>Anything may have changed.</summary>
    public void AddEverything() => IsEverything = true;

    /// <summary>Everything has been looked at.</summary>
    public void Clear()
    {
        _places.Clear();
        _conditions.Clear();
        (IsEverything, OfStaleness) = (false, false);
    }
}
