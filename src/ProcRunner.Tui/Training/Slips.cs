using ProcRunner.Practice;
using ProcRunner.Practice.Gauges;
using ProcRunner.Runs;

namespace ProcRunner.Tui.Training;

/// <summary>Readings of a lesson held against what the faces showed; one that is put right by a correction stays, as such.</summary>
/// <param name="session">The practice head.</param>
internal sealed class Slips(PracticeSession session)
{
    private const int None = -1;
    private readonly List<Misread> _all = [];
    private readonly Dictionary<At, GaugeReading[]> _shown = [];

    /// <summary>All of them, in order.</summary>
    public IReadOnlyList<Misread> All => _all;

    /// <summary>Forgets them.</summary>
    public void Clear() => _all.Clear();

    /// <summary>Takes over one that somebody else has found.</summary>
    public void Add(Misread slip) => _all.Add(slip);

    /// <summary>Takes over a reading, before the head learns of it: the next taking is another draw.</summary>
    /// <param name="state">The run.</param>
    /// <param name="taken">The reading.</param>
    /// <param name="isCorrection">True where it takes the place of the one before: the gauge isn't read again.</param>
    public void Take(RunState state, RunEvent.ReadingTaken taken, bool isCorrection)
    {
        if (session.Chosen(state, taken.At) is not null)
        {
            return;
        }

        GaugeReading[] shown = isCorrection ? _shown.GetValueOrDefault(taken.At, []) : session.Look(state, taken.At);
        _shown[taken.At] = shown;
        for (int i = 0; i < Math.Min(shown.Length, taken.Reading.Places.Count); i++)
        {
            PlaceValue typed = taken.Reading.Places[i];
            bool isRight = typed.Value.CompareTo(shown[i].Shown) == 0;
            int before = isCorrection ? Last(one => one.At == taken.At && one.Place == typed.Place) : None;
            if (before != None)
            {
                _all[before] = _all[before] with
                {
                    Typed = isRight ? _all[before].Typed : typed.Value,
                    IsPutRight = isRight,
                };
            }
            else if (!isRight)
            {
                Shop.Gauge gauge = session.GaugeFor(state.Plan.Steps[taken.At.Step].Taking!).Character.Gauge;
                _all.Add(new Misread(taken.At, typed.Place, typed.Value, shown[i].Shown, gauge));
            }
        }
    }

    /// <summary>Takes over a pass that takes the place of the one before: the readout stands where it stood.</summary>
    public void TakeCorrection(RunEvent.PassCut pass)
    {
        int before = Last(one => one.At == pass.At && one.Place == Misread.OfReadout);
        if (before != None && _all[before].Shown.CompareTo(pass.Progress.Readout) == 0)
        {
            _all[before] = _all[before] with { IsPutRight = true };
        }
    }

    // The latest that is meant and isn't put right yet.
    private int Last(Predicate<Misread> isMeant) => _all.FindLastIndex(one => !one.IsPutRight && isMeant(one));
}
