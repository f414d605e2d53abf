using ProcRunner.Procedures;

namespace ProcRunner.Runs;

/// <summary>
/// Which step takes a stale value again. The first after the one that moved its datum, else the last that took it; but
/// when a step that wants the value comes before that one, the last that takes it before the step that wants it, even in
/// a stage that records the head as found.
/// </summary>
internal sealed class Askers
{
    private readonly RunState _state;
    private readonly Plan _plan;
    private readonly Func<At, Asked> _asked;
    private readonly (int Characteristic, int Position)[] _stale;

    // The same, each as one number, in the same order: to find one quickly.
    private readonly int[] _keys;

    // The step that takes each of them again, or null.
    private readonly int?[] _askers;

    /// <summary>Looks for the steps.</summary>
    /// <param name="state">The run.</param>
    /// <param name="stale">Its stale values, by characteristic, then by position.</param>
    /// <param name="asked">Whether a step is asked for.</param>
    public Askers(RunState state, (int Characteristic, int Position)[] stale, Func<At, Asked> asked)
    {
        (_state, _plan, _asked, _stale) = (state, state.Plan, asked, stale);
        _askers = stale.Length == 0 ? [] : new int?[stale.Length];
        _keys = stale.Length == 0 ? [] : new int[stale.Length];
        for (int i = 0; i < stale.Length; i++)
        {
            (int characteristic, int position) = stale[i];
            _keys[i] = Key(characteristic, position);
            _askers[i] = Usual(characteristic, position, _state.Value(characteristic, position)!.Mover);
        }

        // One value asked earlier can make another wanted earlier; each turn moves one nearer to the start.
        while (MoveOne()) { }
    }

    /// <summary>Index of the step that takes a stale value again; null when none can.</summary>
    public int? Of(int characteristic, int position) =>
        Find(characteristic, position) is >= 0 and int i ? _askers[i] : null;

    /// <summary>True when both know a value as stale, or neither does, and the same step takes it again.</summary>
    public bool SaysTheSame(Askers other, int characteristic, int position)
    {
        int own = Find(characteristic, position);
        int others = other.Find(characteristic, position);
        return own < 0 == others < 0 && (own < 0 || _askers[own] == other._askers[others]);
    }

    /// <summary>True when a value that a step gives is stale.</summary>
    public bool GivesStale(At at) => _stale.Length > 0 && AnyStaleGiven(at, asked: false);

    /// <summary>True when a step is the one that takes a stale value again.</summary>
    public bool AsksAgain(At at) => _stale.Length > 0 && AnyStaleGiven(at, asked: true);

    private int Find(int characteristic, int position) => Array.BinarySearch(_keys, Key(characteristic, position));

    private int Key(int characteristic, int position) => (characteristic * (_plan.Positions.Count + 1)) + position + 1;

    private bool AnyStaleGiven(At at, bool asked)
    {
        if (_plan.StepAt(at.Step).Work is StepWork.Zero)
        {
            return false;
        }

        foreach (int given in _plan.GivenBy(at.Step))
        {
            if (_state.Value(given, at.Position) is { Stale: true } && (!asked || Of(given, at.Position) == at.Step))
            {
                return true;
            }
        }

        return false;
    }

    private int? Usual(int characteristic, int position, int mover)
    {
        int? last = null;
        foreach (int taker in _plan.TakersFor(characteristic))
        {
            At at = new(taker, position);
            if (!CanTake(at) || _plan.IsAsFound(taker))
            {
                continue;
            }

            if (taker > mover)
            {
                return taker;
            }

            last = _state.StandingOf(at) == StepStanding.Waiting ? last : taker;
        }

        return last;
    }

    private bool MoveOne()
    {
        for (int i = 0; i < _stale.Length; i++)
        {
            if (MoveBeforeWanted(i))
            {
                return true;
            }
        }

        return false;
    }

    private bool MoveBeforeWanted(int index)
    {
        (int characteristic, int position) = _stale[index];
        foreach (int reader in _plan.ReadersOf(characteristic))
        {
            int now = _askers[index] ?? int.MaxValue;
            if (now < reader || !IsWantedBy(reader, position))
            {
                continue;
            }

            int before = int.MaxValue;
            foreach (int taker in _plan.TakersFor(characteristic))
            {
                before = taker < reader && CanTake(new At(taker, position)) ? taker : before;
            }

            if (before < now)
            {
                _askers[index] = before;
                return true;
            }
        }

        return false;
    }

    private bool IsWantedBy(int reader, int position)
    {
        foreach (int place in _plan.PositionsAt(reader))
        {
            bool reads = place == position || place == At.Head || position == At.Head;
            if (reads && IsWanting(new At(reader, place)))
            {
                return true;
            }
        }

        return false;
    }

    // To be done, or done and to be done again.
    private bool IsWanting(At at) =>
        _asked(at) == Asked.Yes
        && _state.StandingOf(at) switch
        {
            StepStanding.LeftOut => false,
            StepStanding.Done => _state.Find(at)!.Stale || AsksAgain(at),
            _ => true,
        };

    private bool CanTake(At at) => _asked(at) == Asked.Yes && _state.StandingOf(at) != StepStanding.LeftOut;
}
