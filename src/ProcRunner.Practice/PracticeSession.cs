using ProcRunner.Lessons;
using ProcRunner.Practice.Bindings;
using ProcRunner.Practice.Chances;
using ProcRunner.Practice.Gauges;
using ProcRunner.Practice.Heads;
using ProcRunner.Practice.Works;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Shop;

namespace ProcRunner.Practice;

/// <summary>
/// A practice head being worked on: shows gauges, and answers what happened in the run with what it does to the head. What it
/// shows depends on the seed, the head's number and what happened, and on nothing else, so a lesson taken up again from its
/// trail goes on as it would have. Not thread-safe.
/// </summary>
public sealed class PracticeSession
{
    private readonly Bench _bench;
    private readonly Dictionary<string, PracticeGauge> _gauges;
    private readonly Dictionary<(string, int), int> _takings = [];
    private readonly HashSet<At> _prepared = [];
    private readonly Dictionary<At, Quantity> _stood = [];
    private readonly Dictionary<At, int> _passes = [];
    private readonly ulong _key;

    /// <summary>A head of a binding's setup.</summary>
    /// <param name="binding">The setup on its procedure and head.</param>
    /// <param name="seed">Where all chance starts from.</param>
    /// <param name="number">Which head: each number is another one, the same whatever ran before it.</param>
    public PracticeSession(Binding binding, ulong seed, ulong number)
    {
        Binding = binding;
        _key = SplitMix.Inside(SplitMix.Inside(seed, "head"), number);
        PracticeSetup setup = binding.Setup;
        Head = PracticeHead.Draw(binding.Plan.Head, setup.Heads, new Chance(SplitMix.Inside(_key, "as it came")));
        _bench = new Bench(Head, binding.Plan.Head, setup, SplitMix.Inside(_key, "work"));
        _gauges = setup.Gauges.ToDictionary(
            g => g.Gauge.Kind,
            g => new PracticeGauge(g, SplitMix.Inside(_key, "gauges")),
            StringComparer.Ordinal
        );
    }

    /// <summary>The binding.</summary>
    public Binding Binding { get; }

    /// <summary>The head: what is true.</summary>
    public PracticeHead Head { get; }

    private Plan Plan => Binding.Plan;

    /// <summary>The gauge for a step's reading; one without a kind of gauge may have its own under the reading's name, or is read as it is.</summary>
    public PracticeGauge GaugeFor(Taking taking) =>
        _gauges.GetValueOrDefault(taking.GaugeKind ?? taking.Characteristic) ?? Plain(taking.Characteristic);

    /// <summary>
    /// What the gauge shows at a step now, place by place: the same until the reading is entered. Work that goes before the
    /// reading (touching off, letting the head cool) is done first, once. Empty for a step that reads nothing from a gauge.
    /// </summary>
    public GaugeReading[] Look(RunState state, At at)
    {
        Step step = Plan.Steps[at.Step];
        if (step.Taking is not { } taking || Binding.Reading(taking.Characteristic) is not { } bound)
        {
            return [];
        }

        Prepare(state, at);
        return GaugeFor(taking)
            .Read(
                Head,
                bound.Dimension,
                at.Position,
                bound.PlacesOf(taking.Places),
                _takings.GetValueOrDefault((taking.Characteristic, at.Position))
            );
    }

    /// <summary>What the operator would enter for a reading that is chosen, not measured (a planned skim), in base units; null for others.</summary>
    public double? Chosen(RunState state, At at) =>
        Binding.WorkOf(at.Step) is { } bound && ReferenceEquals(bound.Work, WorkTable.Choose)
            ? Aim(state, at.Position, bound.To)
            : null;

    /// <summary>Something happens to the head that no work of the run does: dirt falls on a seat.</summary>
    /// <param name="values">True values from now on; what isn't named stays.</param>
    public void Change(TruthTable values)
    {
        for (int i = 0; i < Head.Positions; i++)
        {
            Head.TakePart(values, i, new Chance(SplitMix.Inside(_key, "change")));
        }
    }

    /// <summary>What an inspection finds.</summary>
    public string Finding(At at)
    {
        StepWork.Inspect inspect = (StepWork.Inspect)Plan.Steps[at.Step].Work;
        string good = inspect.Findings.FirstOrDefault(f => f.Good)?.Text ?? inspect.Findings[0].Text;
        return Binding.Finding(at.Step) is { } bound
            ? bound.Words.GetValueOrDefault(Head.Condition(bound.Of, at.Position), good)
            : good;
    }

    /// <summary>Where the readout comes to a stop when an operator works to a number; never back from what it showed last.</summary>
    /// <param name="wanted">The number worked to.</param>
    /// <param name="last">What the readout showed last, from which the tool goes on.</param>
    public Quantity StopAt(Quantity wanted, Quantity last)
    {
        Quantity stop = _bench.Spindle.StopAt(wanted);
        bool back = Binding.Setup.Readout.GrowsDeeper ? stop.CompareTo(last) < 0 : stop.CompareTo(last) > 0;
        return back ? wanted : stop;
    }

    /// <summary>True where a step cuts metal off the head.</summary>
    public bool Cuts(At at) => Binding.WorkOf(at.Step)?.Work.Cuts is not null;

    /// <summary>
    /// What the readout shows after one turn of the feed by hand: about ten of its steps, or one and now and then two. It
    /// depends on the pass and the turn alone, so that the same keys give the same cut.
    /// </summary>
    /// <param name="at">The cut.</param>
    /// <param name="from">What the readout showed before the turn.</param>
    /// <param name="turn">Which turn of this pass, from 0.</param>
    /// <param name="isCoarse">True for the coarse feed.</param>
    public Quantity Feed(At at, Quantity from, int turn, bool isCoarse)
    {
        const int Coarse = 8;
        const int CoarseMore = 5;
        const double Slips = 0.2;
        ulong pass = SplitMix.Inside(
            SplitMix.Inside(SplitMix.Inside(_key, "hand"), ((ulong)at.Step << 32) + (ulong)(at.Position + 2)),
            (ulong)Passes(at)
        );
        double chance = new Chance(SplitMix.Inside(pass, (ulong)turn)).Even();
        int steps =
            isCoarse ? Coarse + (int)(chance * CoarseMore)
            : chance < Slips ? 2
            : 1;
        Readout readout = Binding.Setup.Readout;
        return new Quantity(from.Value + ((readout.GrowsDeeper ? steps : -steps) * readout.Step), from.Unit);
    }

    /// <summary>How many passes were cut at a step so far.</summary>
    public int Passes(At at) => _passes.GetValueOrDefault(at);

    /// <summary>Where the tool really stands for the next pass of a cut, whatever is entered for it.</summary>
    public void StandsAt(At at, Quantity shown) => _stood[at] = shown;

    /// <summary>Takes over what an accepted command did: after the run has applied it.</summary>
    public void Apply(RunState state, IReadOnlyList<RunEvent> events)
    {
        foreach (RunEvent happened in events)
        {
            switch (happened)
            {
                case RunEvent.StepDone done:
                    Do(state, done.At);
                    break;
                case RunEvent.PartFitted fitted:
                    Do(state, fitted.At);
                    break;
                case RunEvent.ReadingTaken taken:
                    Prepare(state, taken.At);
                    CountTaking(taken.Reading.Characteristic, taken.At);
                    break;
                case RunEvent.EntryQuestioned asked when Plan.Steps[asked.At.Step].Taking is { } taking:
                    Prepare(state, asked.At);
                    CountTaking(taking.Characteristic, asked.At);
                    break;
                case RunEvent.Reopened reopened:
                    _prepared.ExceptWith(reopened.Items);
                    BeginAnew(reopened.Items);
                    break;
                case RunEvent.ZeroSet zero when Binding.WorkOf(zero.At.Step)?.Work is { Touches: { } touches } work:
                    _bench.Spindle.SetAt(work.Name, touches(_bench, zero.At.Position), zero.Zero.Set);
                    _prepared.Remove(zero.At);
                    break;
                case RunEvent.PassCut pass when Binding.WorkOf(pass.At.Step)?.Work.Cuts is { } cuts:
                    Quantity stood = _stood.Remove(pass.At, out Quantity truly) ? truly : pass.Progress.Readout;
                    cuts(_bench, pass.At.Position, _bench.Spindle.CutTo(stood));
                    _passes[pass.At] = _passes.GetValueOrDefault(pass.At) + 1;
                    break;
                case RunEvent.ChangeReported change:
                    Binding.WorkOfChange(change.Change)?.Do?.Invoke(_bench, change.Position, 0);
                    break;
                case RunEvent.WayTaken way when Binding.WayOf(way.At.Step, way.Way) is { } bound:
                    bound.Work.Do?.Invoke(_bench, way.At.Position, Aim(state, way.At.Position, bound.To));
                    break;
                default:
                    break;
            }
        }
    }

    private void BeginAnew(IEnumerable<At> items)
    {
        foreach (At at in items)
        {
            Binding.WorkOf(at.Step)?.Work.BeginsAnew?.Invoke(_bench);
        }
    }

    /// <summary>What terms add up to, in base units: a reading that is known, or the aim of a limit, or a tool's error.</summary>
    internal double Aim(RunState state, int position, IReadOnlyList<AimTerm> terms) =>
        terms.Sum(term => (term.IsSubtracted ? -1 : 1) * Term(state, position, term.Name));

    private double Term(RunState state, int position, string name)
    {
        const string AimOf = "aim of ";
        if (name.StartsWith(AimOf, StringComparison.Ordinal))
        {
            return OfLimit(position, name[AimOf.Length..]);
        }

        if (Plan.TryCharacteristic(name, out int index))
        {
            int where = Plan.Procedure.Characteristics[index].OfHead ? At.Head : position;
            return state.Value(index, where) is { } known ? PracticeHead.InBase(known.Value) : OfLimit(position, name);
        }

        return Tooling.Known.ContainsKey(name) ? _bench.Tools[name] : OfLimit(position, name);
    }

    private double OfLimit(int position, string name) =>
        Plan.Head.LimitOf(name, Plan.PositionOf(position)) is { } limit
            ? limit switch
            {
                { Aim: { } aim } => PracticeHead.InBase(aim),
                { Low: { } low, High: { } high } => (PracticeHead.InBase(low) + PracticeHead.InBase(high)) / 2,
                { Low: { } low } => PracticeHead.InBase(low),
                { High: { } high } => PracticeHead.InBase(high),
                _ => 0,
            }
            : 0;

    private void Do(RunState state, At at)
    {
        if (Binding.WorkOf(at.Step) is { } bound)
        {
            bound.Work.Do?.Invoke(_bench, at.Position, Aim(state, at.Position, bound.To));
        }
    }

    private void Prepare(RunState state, At at)
    {
        bool reads = Plan.Steps[at.Step].Work is StepWork.Measure or StepWork.Zero;
        if (reads && _prepared.Add(at))
        {
            Do(state, at);
        }
    }

    // A seat that was touched off stays so until the zero is begun anew; anything else is made ready for each taking.
    private void CountTaking(string characteristic, At at)
    {
        if (Plan.Steps[at.Step].Work is not StepWork.Zero)
        {
            _prepared.Remove(at);
        }

        _takings[(characteristic, at.Position)] = _takings.GetValueOrDefault((characteristic, at.Position)) + 1;
    }

    // No gauge is kept for it: read as it is, to a fair number of digits.
    private PracticeGauge Plain(string characteristic)
    {
        Unit unit = Plan.Procedure.Characteristics[Plan.CharacteristicIndex(characteristic)].UnitOn(Plan.Head);
        decimal step = 1;
        for (int i = 0; i < Show.DigitsOf(unit); i++)
        {
            step /= 10;
        }

        Quantity resolution = new(step, unit);
        Shop.Gauge gauge = new(characteristic, characteristic, characteristic, resolution, resolution, null, null);
        return _gauges[characteristic] = new PracticeGauge(
            new GaugeCharacter(gauge, 0, 0, 0, 0, 0, 0),
            SplitMix.Inside(_key, "gauges")
        );
    }
}
