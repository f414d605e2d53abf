using System.Globalization;
using ProcRunner.Lessons;
using ProcRunner.Practice.Bindings;
using ProcRunner.Practice.Gauges;
using ProcRunner.Practice.Heads;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Shop;

namespace ProcRunner.Practice.Operators;

/// <summary>
/// Plays a procedure on a practice head from its opening to its end through the real decisions, in memory: asks the gauges,
/// works to the program's targets, decides by the setup's rules, and answers a refusal as the procedure offers: measure again
/// once, then the ways on in their order, then give the head up.
/// </summary>
public sealed class ModelOperator
{
    private const int MostEntries = 6000;
    private const int MostTries = 8;
    private static readonly string NoDigest = Trail.Digest.Zero.ToString();
    private static readonly DateTimeOffset Start = new(2026, 1, 5, 8, 0, 0, TimeSpan.Zero);

    private readonly Binding _binding;
    private readonly ShopState _shop;
    private readonly PracticeSession _session;
    private readonly RunState _state;
    private readonly List<(At At, string Way)> _refusals = [];
    private readonly Dictionary<At, int> _tries = [];
    private readonly Dictionary<(int, int), (GaugeReading[] Readings, double Standard)> _taken = [];
    private readonly Dictionary<At, GaugeReading[]> _looked = [];
    private readonly List<CutEnd> _cuts = [];
    private readonly HashSet<At> _inMetal = [];
    private readonly Func<RunCommand, (string Fault, IReadOnlyList<RunEvent> Events)>? _carry;
    private int _entries;

    private ModelOperator(Binding binding, ShopState shop, ulong seed, ulong number)
    {
        (_binding, _shop) = (binding, shop);
        _session = new PracticeSession(binding, seed, number);
        _state = new RunState(binding.Plan, "practice");
    }

    private ModelOperator(
        PracticeSession session,
        RunState state,
        ShopState shop,
        Func<RunCommand, (string Fault, IReadOnlyList<RunEvent> Events)> carry
    )
    {
        (_binding, _shop) = (session.Binding, shop);
        (_session, _state, _carry) = (session, state, carry);
    }

    private Plan Plan => _binding.Plan;

    /// <summary>Plays one head.</summary>
    /// <param name="binding">The setup on its procedure and head.</param>
    /// <param name="shop">The shop, as <see cref="PracticeShop"/> makes it.</param>
    /// <param name="seed">Where all chance starts from.</param>
    /// <param name="number">Which head.</param>
    public static HeadOutcome Play(Binding binding, ShopState shop, ulong seed, ulong number) =>
        new ModelOperator(binding, shop, seed, number).Play();

    /// <summary>Works a job of somebody's up to where a lesson begins.</summary>
    /// <param name="session">The practice head; whoever carries commands out lets it know what happened.</param>
    /// <param name="state">The run, open.</param>
    /// <param name="shop">The shop.</param>
    /// <param name="carry">
    /// Carries a command out: its events, or why not. A signature or a way on that needs one comes with a mark that
    /// signs nothing; to sign it is the carrier's business.
    /// </param>
    /// <param name="isReached">True at the step to stop before.</param>
    /// <returns>What it couldn't do; empty when it got there.</returns>
    public static string PlayTo(
        PracticeSession session,
        RunState state,
        ShopState shop,
        Func<RunCommand, (string Fault, IReadOnlyList<RunEvent> Events)> carry,
        Func<At, bool> isReached
    )
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(isReached);
        ModelOperator model = new(session, state, shop, carry);
        string refused = "";
        while (refused.Length == 0 && model._entries < MostEntries)
        {
            if (Prompter.Next(state) is not { } at)
            {
                return "Nothing is open.";
            }

            if (isReached(at))
            {
                return "";
            }

            refused = model.Answer(Prompter.At(state, shop, at));
        }

        return refused.Length > 0 ? refused : "It takes too many entries.";
    }

    private HeadOutcome Play()
    {
        JobHeader header = new()
        {
            Stamp = "practice",
            ProcedureDigest = NoDigest,
            HeadDigest = NoDigest,
            Practice = true,
        };
        string refused = Try(new RunCommand.OpenJob(header));
        while (refused.Length == 0 && _entries < MostEntries)
        {
            if (Prompter.Next(_state) is not { } at || _state.Standing is JobStanding.Released or JobStanding.Scrapped)
            {
                break;
            }

            refused = Answer(Prompter.At(_state, _shop, at));
        }

        return _state.Standing switch
        {
            JobStanding.Released => Ended(HeadEnd.Released, ""),
            JobStanding.Scrapped => Ended(HeadEnd.Scrapped, _refusals.Count > 0 ? Plan.NameOf(_refusals[^1].At) : ""),
            _ => Ended(HeadEnd.Stuck, refused.Length > 0 ? refused : "too many entries, or nothing is open"),
        };
    }

    private HeadOutcome Ended(HeadEnd end, string why) =>
        new(end, why, _entries, _refusals, _cuts, end == HeadEnd.Released ? [.. Holding()] : []);

    // What is refused is tried in another way once; the words of the refusal are the answer when that doesn't help.
    private string Answer(Prompt prompt)
    {
        At at = prompt.At;
        switch (prompt.Awaits)
        {
            case Awaited.Signature:
                return Try(new RunCommand.Sign(at, Mark, null));
            case Awaited.WayOn:
                return TakeWay(prompt);
            case Awaited.Reading:
                return Try(new RunCommand.Enter(at, Reading(prompt)));
            case Awaited.NumberSet:
                return Try(new RunCommand.Enter(at, prompt.NumberToSet.ToString()!));
            case Awaited.Readout when IsGoodEnough(prompt) && Try(new RunCommand.EndCut(at)).Length == 0:
                return "";
            case Awaited.Readout:
                return Try(
                    new RunCommand.Enter(at, _session.StopAt(prompt.Target!.Show, prompt.Progress!.Readout).ToString())
                );
            case Awaited.Finding:
                return Try(new RunCommand.Enter(at, _session.Finding(at)));
            case Awaited.Choice:
                return Try(new RunCommand.Enter(at, Choice(prompt)));
            case Awaited.Part:
                return Try(new RunCommand.Enter(at, "P-1, lot P"));
            default:
                return prompt.Step.MayBeLeftOut && _binding.WorkOf(at.Step) is null
                    ? Try(new RunCommand.LeaveOut(at, "not needed on the practice head"))
                    : Try(new RunCommand.Enter(at, "done"));
        }
    }

    private bool IsGoodEnough(Prompt prompt) =>
        _binding.Setup.EndsCutsInWindow
        && prompt.Progress is { } progress
        && progress.Travel.Value > 0
        && progress.Travel == progress.TravelAtReading;

    private string Try(RunCommand command)
    {
        if (_carry is not null)
        {
            (string fault, IReadOnlyList<RunEvent> happened) = _carry(command);
            _entries++;
            foreach (RunEvent one in happened)
            {
                Notice(one);
            }

            return fault;
        }

        Moment moment = new(Start.AddMinutes(_entries), PracticeShop.Lead, NoDigest);
        Decision decision = RunDecider.DecideOnPractice(_state, _shop, command, moment, PracticeShop.Sign);
        if (decision is Decision.Refused refused)
        {
            return refused.Why;
        }

        IReadOnlyList<RunEvent> events = ((Decision.Accepted)decision).Events;
        _entries++;
        _state.Apply(_entries, events);
        _session.Apply(_state, events);
        foreach (RunEvent happened in events)
        {
            Notice(happened);
        }

        return "";
    }

    private void Notice(RunEvent happened)
    {
        switch (happened)
        {
            case RunEvent.ReadingTaken taken when _looked.Remove(taken.At, out GaugeReading[]? looked):
                Taking taking = Plan.Steps[taken.At.Step].Taking!;
                _taken[(Plan.CharacteristicIndex(taking.Characteristic), taken.At.Position)] = (
                    looked,
                    StandardOf(_session.GaugeFor(taking))
                );
                NoticeCut(taken, looked);
                break;
            case RunEvent.EntryQuestioned asked:
                _looked.Remove(asked.At);
                break;
            case RunEvent.PassCut pass:
                _inMetal.Add(pass.At);
                break;
            case RunEvent.CutEnded ended:
                NoticeEnd(ended.At);
                break;
            default:
                break;
        }
    }

    private void NoticeCut(RunEvent.ReadingTaken taken, GaugeReading[] looked)
    {
        if (Plan.Steps[taken.At.Step].Work is StepWork.Cut && taken.Reading.Judgement.Verdict != Verdict.Short)
        {
            AddCut(taken.At, taken.Reading, looked);
        }
    }

    private void NoticeEnd(At at)
    {
        int characteristic = Plan.CharacteristicIndex(Plan.Steps[at.Step].Taking!.Characteristic);
        if (_taken.TryGetValue((characteristic, at.Position), out (GaugeReading[] Readings, double) last))
        {
            AddCut(at, _state.Find(at)!.Readings[^1], last.Readings);
        }
    }

    private void AddCut(At at, TakenReading reading, GaugeReading[] looked)
    {
        // One end for each time metal was taken: measuring again is no other cut.
        if (!_inMetal.Remove(at))
        {
            return;
        }

        double? high = reading.Judgement.High is { } most ? PracticeHead.InBase(most) : null;
        _cuts.Add(new CutEnd(at, looked.Max(r => r.True), high));
    }

    private static double StandardOf(PracticeGauge gauge) =>
        gauge.Character.Standard() * gauge.Character.Gauge.Resolution.Unit.Factor.ToDouble();

    private string Reading(Prompt prompt)
    {
        Unit unit = prompt.Unit ?? Plan.Head.LengthUnit;
        if (_session.Chosen(_state, prompt.At) is { } chosen)
        {
            return Chosen(prompt, chosen, unit);
        }

        GaugeReading[] looked = _session.Look(_state, prompt.At);
        _looked[prompt.At] = looked;

        // A question about the last entry is answered by reading again and typing the unit with it.
        bool bare = prompt.Question is null && looked.Length > 0 && looked[0].Shown.Unit == unit;
        return string.Join(
            bare ? " " : "; ",
            looked.Select(r => bare ? r.Shown.Value.ToString(CultureInfo.InvariantCulture) : r.Shown.ToString())
        );
    }

    // Up to the next thousandth, within what is allowed.
    private static string Chosen(Prompt prompt, double chosen, Unit unit)
    {
        decimal wanted = Math.Ceiling((decimal)(chosen / unit.Factor.ToDouble()) * 1000) / 1000;
        decimal most = prompt.Window.High is { } high && high.Unit == unit ? high.Value : wanted;
        return new Quantity(Math.Max(0, Math.Min(wanted, most)), unit).ToString();
    }

    private string Choice(Prompt prompt)
    {
        StepWork.Decide decide = (StepWork.Decide)prompt.Step.Work;
        foreach (ChoiceRule rule in _binding.Setup.Decisions[decide.Subject])
        {
            if (Holds(rule, prompt.At.Position))
            {
                return rule.Choose;
            }
        }

        return decide.Choices[0];
    }

    private bool Holds(ChoiceRule rule, int position)
    {
        if (
            rule.Found is { } found
            && !rule.Is.Contains(_state.FindingOf(found, position) ?? "", StringComparer.Ordinal)
        )
        {
            return false;
        }

        if (rule.Reading is not { } reading)
        {
            return true;
        }

        if (
            _state.Value(reading, position) is not { } value
            || Plan.Head.LimitOf(rule.Limit ?? reading, Plan.PositionOf(position)) is not { } limit
        )
        {
            return false;
        }

        return (limit.Low is { } low && value.Value.CompareTo(low) < 0)
            || (limit.High is { } high && value.Value.CompareTo(high) > 0);
    }

    private string TakeWay(Prompt prompt)
    {
        At at = prompt.At;
        int tries = _tries[at] = _tries.GetValueOrDefault(at) + 1;
        WayOn[] rework = [.. prompt.WaysOn.Where(w => w.Kind is WayKind.Rework or WayKind.Replace)];
        WayOn? again = prompt.WaysOn.FirstOrDefault(w => w.Kind == WayKind.Again);
        WayOn? way =
            again is not null && (tries == 1 || rework.Length == 0) && tries < MostTries ? again
            : rework.Length > 0 && tries < MostTries ? rework[(tries - 2 + rework.Length) % rework.Length]
            : prompt.WaysOn.FirstOrDefault(w => w.Kind == WayKind.Scrap);
        if (way is null)
        {
            return $"no way on at {Plan.NameOf(at)}";
        }

        _refusals.Add((at, way.Text));
        return
            Try(new RunCommand.TakeWay(at, way.Text, "rehearsal", way.Kind == WayKind.Scrap ? Mark : null))
                is { Length: > 0 } refused
            ? $"{refused} at {Plan.NameOf(at)}: {way.Text}"
            : "";
    }

    private static Mark Mark => new(PracticeShop.Lead, PracticeShop.Name, Start, PracticeShop.Sign);

    // Every judged value at the end, against what is true of the head then.
    private IEnumerable<Held> Holding()
    {
        for (int c = 0; c < Plan.Procedure.Characteristics.Count; c++)
        {
            if (_binding.Reading(c) is not { } bound)
            {
                continue;
            }

            bool ofHead = Plan.Procedure.Characteristics[c].OfHead;
            for (int p = ofHead ? At.Head : 0; p < (ofHead ? 0 : Plan.Positions.Count); p++)
            {
                if (_state.Value(c, p) is { } value && value.Judgement is { Low: not null } or { High: not null })
                {
                    foreach (Held held in Held(c, p, bound, _state.Value(c, p)!))
                    {
                        yield return held;
                    }
                }
            }
        }
    }

    private IEnumerable<Held> Held(int c, int p, BoundDimension bound, ValueRecord value)
    {
        Quantity[] shown = value.Places.Count > 0 ? [.. value.Places.Select(v => v.Value)] : [value.Value];
        IReadOnlyList<int> places = bound.PlacesOf([
            .. value.Places.Count > 1 ? value.Places.Select(v => v.Place) : [],
        ]);
        int[] inputs = [.. _binding.Inputs(value.ByStep, c).Where(i => _taken.ContainsKey((i, p)))];
        double standard = Math.Sqrt(inputs.Sum(i => _taken[(i, p)].Standard * _taken[(i, p)].Standard));
        bool moved = inputs.Any(i => HasMoved(i, p));
        for (int i = 0; i < shown.Length; i++)
        {
            yield return new Held(
                c,
                p,
                value.Places.Count > 1 ? value.Places[i].Place : "",
                PracticeHead.InBase(shown[i]),
                _session.Head[bound.Dimension, p, places[Math.Min(i, places.Count - 1)]],
                value.Judgement.Low is { } low ? PracticeHead.InBase(low) : null,
                value.Judgement.High is { } high ? PracticeHead.InBase(high) : null,
                standard,
                moved
            );
        }
    }

    private bool HasMoved(int characteristic, int position)
    {
        BoundDimension bound = _binding.Reading(characteristic)!;
        GaugeReading[] readings = _taken[(characteristic, position)].Readings;
        IReadOnlyList<PlaceValue> named = _state.Value(characteristic, position)?.Places ?? [];
        IReadOnlyList<int> places = bound.PlacesOf([.. named.Count > 1 ? named.Select(v => v.Place) : []]);
        return readings
            .Take(places.Count)
            .Where((r, i) => Math.Abs(_session.Head[bound.Dimension, position, places[i]] - r.True) > 1e-6)
            .Any();
    }
}
