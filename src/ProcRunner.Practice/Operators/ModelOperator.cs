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
/// once, then rework and other parts in their order; where nothing of that is left or helps, a concession as far as the setup
/// says that the shop concedes, and otherwise the head is given up.
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
    private readonly List<At> _concessions = [];
    private readonly VerdictCounts _verdicts;
    private readonly Func<RunCommand, (string Fault, IReadOnlyList<RunEvent> Events)>? _carry;
    private int _entries;

    private ModelOperator(Binding binding, ShopState shop, ulong seed, ulong number)
    {
        (_binding, _shop) = (binding, shop);
        _session = new PracticeSession(binding, seed, number);
        _verdicts = new VerdictCounts(binding);
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
        _verdicts = new VerdictCounts(session.Binding);
    }

    private Plan Plan => _binding.Plan;

    /// <summary>Plays one head.</summary>
    /// <param name="binding">The setup on its procedure and head.</param>
    /// <param name="shop">The shop, as <see cref="PracticeShop"/> makes it.</param>
    /// <param name="seed">Where all chance starts from.</param>
    /// <param name="number">Which head.</param>
    public static HeadOutcome Play(Binding binding, ShopState shop, ulong seed, ulong number) =>
        new ModelOperator(binding, shop, seed, number).Play();

    /// <summary>Works at a job of somebody's: what goes before a lesson, or beside it.</summary>
    /// <param name="session">The practice head; whoever carries commands out lets it know what happened.</param>
    /// <param name="state">The run, open.</param>
    /// <param name="shop">The shop.</param>
    /// <param name="carry">
    /// Carries a command out: its events, or why not. A signature or a way on that needs one comes with a mark that
    /// signs nothing; to sign it is the carrier's business.
    /// </param>
    /// <param name="next">The open step to work now; null once that is all.</param>
    /// <returns>What it couldn't do; empty when it got to the end.</returns>
    public static string Work(
        PracticeSession session,
        RunState state,
        ShopState shop,
        Func<RunCommand, (string Fault, IReadOnlyList<RunEvent> Events)> carry,
        Func<At?> next
    )
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(next);
        ModelOperator model = new(session, state, shop, carry);
        string refused = "";
        while (refused.Length == 0 && model._entries < MostEntries)
        {
            if (next() is not { } at)
            {
                return "";
            }

            refused = model.Answer(Prompter.WithoutNumbers(state, shop, at));
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

            refused = Answer(Prompter.WithoutNumbers(_state, _shop, at));
        }

        return _state.Standing switch
        {
            JobStanding.Released => Ended(HeadEnd.Released, ""),
            JobStanding.Scrapped => Ended(HeadEnd.Scrapped, _refusals.Count > 0 ? Plan.NameOf(_refusals[^1].At) : ""),
            _ => Ended(HeadEnd.Stuck, refused.Length > 0 ? refused : NoEnd()),
        };
    }

    private string NoEnd() =>
        Prompter.Next(_state) is { } at ? $"too many entries, the last at {Plan.NameOf(at)}" : "nothing is open";

    private HeadOutcome Ended(HeadEnd end, string why) =>
        new(
            end,
            why,
            _entries,
            _refusals,
            _cuts,
            _concessions,
            _verdicts.All,
            end == HeadEnd.Released ? new HeldValues(_session, _state, _taken).All() : []
        );

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
                _verdicts.Add(_session.Head, taken, looked);
                NoticeCut(taken, looked);
                break;
            case RunEvent.EntryQuestioned asked:
                _looked.Remove(asked.At);
                break;
            case RunEvent.PassCut pass:
                _inMetal.Add(pass.At);
                break;
            case RunEvent.Conceded conceded:
                _concessions.Add(conceded.At);
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
            : prompt.WaysOn.FirstOrDefault(w =>
                w.Kind == WayKind.Concession && Concession.IsGiven(_binding, _state, at)
            ) ?? prompt.WaysOn.FirstOrDefault(w => w.Kind == WayKind.Scrap);
        if (way is null)
        {
            return $"no way on at {Plan.NameOf(at)}";
        }

        _refusals.Add((at, way.Text));
        return
            Try(new RunCommand.TakeWay(at, way.Text, "rehearsal", NeedsLead(way) ? Mark : null))
                is { Length: > 0 } refused
            ? $"{refused} at {Plan.NameOf(at)}: {way.Text}"
            : "";
    }

    private static bool NeedsLead(WayOn way) => way.Kind is WayKind.Scrap or WayKind.Concession;

    private static Mark Mark => new(PracticeShop.Lead, PracticeShop.Name, Start, PracticeShop.Sign);
}
