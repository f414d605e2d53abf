using ProcRunner.Practice.Operators;
using ProcRunner.Runs;
using ProcRunner.ShopMath;

namespace ProcRunner.Practice.Rehearsals;

/// <summary>What many heads came to. Its size doesn't grow with their number, but for a byte of each.</summary>
public sealed class Tally
{
    private const int MostEscapes = 5000;
    private readonly Plan _plan;
    private readonly Dictionary<int, long> _refused = [];
    private readonly Dictionary<int, long> _given = [];
    private readonly SortedDictionary<string, long> _stuck = new(StringComparer.Ordinal);
    private readonly SortedDictionary<(int Characteristic, string Kind), Distribution> _spreads = new(
        Comparer<(int Characteristic, string Kind)>.Create(
            static (a, b) =>
                a.Characteristic != b.Characteristic
                    ? a.Characteristic.CompareTo(b.Characteristic)
                    : string.CompareOrdinal(a.Kind, b.Kind)
        )
    );
    private readonly List<Escape> _escapes = [];
    private readonly List<bool> _firstTimes = [];
    private readonly SortedDictionary<int, CutCount> _cuts = [];
    private readonly ReadingCount[] _readings;
    private readonly ConformanceBin[] _conformance = ConformanceBin.None();

    internal Tally(Plan plan)
    {
        _plan = plan;
        _readings = new ReadingCount[plan.Procedure.Characteristics.Count];
    }

    /// <summary>How many heads.</summary>
    public long Heads { get; private set; }

    /// <summary>How many were released.</summary>
    public long Released { get; private set; }

    /// <summary>Released without one result out of spec on the way.</summary>
    public long FirstTime { get; private set; }

    /// <summary>Whether each head was in spec the first time, in their order.</summary>
    public IReadOnlyList<bool> FirstTimes => _firstTimes;

    /// <summary>Released with one result or more conceded.</summary>
    public long Conceded { get; private set; }

    /// <summary>How many were given up.</summary>
    public long Scrapped { get; private set; }

    /// <summary>How many entries in all.</summary>
    public long Entries { get; private set; }

    /// <summary>How many values were judged at a release.</summary>
    public long Judged { get; private set; }

    /// <summary>How many of them are truly out of limits.</summary>
    public long Escaped { get; private set; }

    /// <summary>Released heads with at least one such value.</summary>
    public long HeadsWithEscape { get; private set; }

    /// <summary>Of those values, the ones that no gauge's error explains: a fault of the run, or of the procedure.</summary>
    public long Unexplained { get; private set; }

    /// <summary>How many values out of limits the readings and their gauges' uncertainty let expect (JCGM 106:2012, 7.4, summed).</summary>
    public double Expected { get; private set; }

    /// <summary>Values that stand by a concession and are out of limits in truth; they aren't counted as escaped.</summary>
    public long ConcededOut { get; private set; }

    /// <summary>Judged values by their chance of being in limits.</summary>
    public IReadOnlyList<ConformanceBin> Conformance => _conformance;

    /// <summary>How many cuts came to their end.</summary>
    public long Cuts { get; private set; }

    /// <summary>How many of them went deeper than the high limit, in truth.</summary>
    public long CutsOver { get; private set; }

    /// <summary>Cuts by the index of their step.</summary>
    public IReadOnlyDictionary<int, CutCount> CutsAt => _cuts;

    /// <summary>How the verdicts on readings stood to the truth when they were taken, by index of the characteristic.</summary>
    public IReadOnlyList<ReadingCount> Readings => _readings;

    /// <summary>Heads refused at a step, by its index.</summary>
    public IReadOnlyDictionary<int, long> RefusedAt => _refused;

    /// <summary>Heads given up at a step, by its index.</summary>
    public IReadOnlyDictionary<int, long> ScrappedAt => _given;

    /// <summary>Heads that came to no end, by why.</summary>
    public IReadOnlyDictionary<string, long> Stuck => _stuck;

    /// <summary>True values at the release, by characteristic and kind of position ("" for the head).</summary>
    public IReadOnlyDictionary<(int Characteristic, string Kind), Distribution> Spreads => _spreads;

    /// <summary>The first of the values that escaped, those unexplained before the others.</summary>
    public IReadOnlyList<Escape> Escapes => _escapes;

    internal void Add(long number, HeadOutcome head)
    {
        Heads++;
        Entries += head.Entries;
        FirstTime += head.FirstTime ? 1 : 0;
        Released += head.End == HeadEnd.Released ? 1 : 0;
        Scrapped += head.End == HeadEnd.Scrapped ? 1 : 0;
        Conceded += head.End == HeadEnd.Released && head.Concessions.Count > 0 ? 1 : 0;
        _firstTimes.Add(head.FirstTime);
        Add(head.Cuts);
        Add(head.Readings);
        foreach (int step in head.Refusals.Select(r => r.At.Step).Distinct())
        {
            _refused[step] = _refused.GetValueOrDefault(step) + 1;
        }

        if (head.End == HeadEnd.Scrapped && head.Refusals.Count > 0)
        {
            int step = head.Refusals[^1].At.Step;
            _given[step] = _given.GetValueOrDefault(step) + 1;
        }
        else if (head.End == HeadEnd.Stuck)
        {
            _stuck[head.Why] = _stuck.GetValueOrDefault(head.Why) + 1;
        }

        long escaped = Escaped;
        foreach (Held value in head.Values)
        {
            Add(number, value);
        }

        HeadsWithEscape += Escaped > escaped ? 1 : 0;
    }

    private void Add(IReadOnlyList<CutEnd> cuts)
    {
        foreach (CutEnd cut in cuts)
        {
            Cuts++;
            CutsOver += cut.IsOver ? 1 : 0;
            if (cut.High is { } high)
            {
                CountOf(cut.At.Step).Add(high - cut.Deepest, cut.IsOver);
            }
        }
    }

    private void Add(IReadOnlyList<ReadingCount> readings)
    {
        for (int i = 0; i < _readings.Length; i++)
        {
            _readings[i] += readings[i];
        }
    }

    private CutCount CountOf(int step)
    {
        if (!_cuts.TryGetValue(step, out CutCount? count))
        {
            _cuts[step] = count = new CutCount();
        }

        return count;
    }

    internal void Add(Tally other)
    {
        Conceded += other.Conceded;
        ConcededOut += other.ConcededOut;
        _firstTimes.AddRange(other._firstTimes);
        Add(other._readings);
        for (int i = 0; i < _conformance.Length; i++)
        {
            _conformance[i] = _conformance[i].With(other._conformance[i]);
        }

        foreach ((int step, CutCount cuts) in other._cuts)
        {
            CountOf(step).Add(cuts);
        }

        Heads += other.Heads;
        Entries += other.Entries;
        Released += other.Released;
        FirstTime += other.FirstTime;
        Scrapped += other.Scrapped;
        Judged += other.Judged;
        Escaped += other.Escaped;
        HeadsWithEscape += other.HeadsWithEscape;
        Unexplained += other.Unexplained;
        Expected += other.Expected;
        Cuts += other.Cuts;
        CutsOver += other.CutsOver;
        Merge(_refused, other._refused);
        Merge(_given, other._given);
        Merge(_stuck, other._stuck);
        foreach (((int, string) key, Distribution spread) in other._spreads)
        {
            if (!_spreads.TryGetValue(key, out Distribution? mine))
            {
                _spreads[key] = mine = new Distribution(spread.Low, spread.High, spread.From, spread.To);
            }

            mine.Add(spread);
        }

        foreach (Escape escape in other._escapes)
        {
            Keep(escape);
        }
    }

    private static void Merge<T>(IDictionary<T, long> into, IDictionary<T, long> from)
    {
        foreach ((T key, long count) in from)
        {
            into[key] = (into.TryGetValue(key, out long before) ? before : 0) + count;
        }
    }

    private void Add(long number, Held value)
    {
        Judged++;
        double conforms = value.Standard > 0 ? ChanceOf(value) : 1;
        bool escaped = value.IsOut && !value.Conceded;
        ConcededOut += value.IsOut && value.Conceded ? 1 : 0;
        if (!value.Conceded)
        {
            int bin = ConformanceBin.IndexOf(conforms);
            _conformance[bin] = _conformance[bin].With(conforms, escaped);
            Expected += 1 - conforms;
        }

        string kind = value.Position == At.Head ? "" : _plan.Positions[value.Position].Kind;
        if (!_spreads.TryGetValue((value.Characteristic, kind), out Distribution? spread))
        {
            _spreads[(value.Characteristic, kind)] = spread = Over(value);
        }

        spread.Add(value.TrueNow, value.IsOut, value.Low, value.High);
        if (escaped)
        {
            Escaped++;
            Unexplained += value.IsUnexplained ? 1 : 0;
            Keep(new Escape(number, value, conforms));
        }
    }

    private static double ChanceOf(Held value) =>
        (value.High is { } high ? Normal((high - value.Shown) / value.Standard) : 1)
        - (value.Low is { } low ? Normal((low - value.Shown) / value.Standard) : 0);

    // Nine deviations out, what is left is less than the last digit of 1.
    private static double Normal(double z) =>
        z > 9 ? 1
        : z < -9 ? 0
        : Distributions.Normal(z);

    // A quarter of the window beyond each limit; with one limit the window is as wide as the limit is far from 0.
    private static Distribution Over(Held value)
    {
        double width = value is { Low: { } least, High: { } most }
            ? most - least
            : Math.Abs(value.High ?? value.Low ?? 0);
        width = Math.Max(width, 1e-4);
        double from = (value.Low ?? (value.High!.Value - width)) - (width / 4);
        double to = (value.High ?? (value.Low!.Value + width)) + (width / 4);
        return new Distribution(value.Low, value.High, from, to);
    }

    private void Keep(Escape escape)
    {
        if (escape.Value.IsUnexplained)
        {
            _escapes.Insert(_escapes.FindLastIndex(e => e.Value.IsUnexplained) + 1, escape);
        }
        else
        {
            _escapes.Add(escape);
        }

        if (_escapes.Count > MostEscapes)
        {
            _escapes.RemoveAt(_escapes.Count - 1);
        }
    }
}
