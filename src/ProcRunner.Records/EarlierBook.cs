using ProcRunner.Procedures;
using ProcRunner.Records.Story;
using ProcRunner.Runs;

namespace ProcRunner.Records;

/// <summary>Follows every reading, finding and choice through all that took its place, with why.</summary>
internal sealed class EarlierBook(Telling tell)
{
    private readonly Dictionary<(string About, int Position), Standing> _last = [];
    private readonly List<Earlier> _all = [];

    /// <summary>All of them, in the order in which they stopped holding.</summary>
    public IReadOnlyList<Earlier> All => [.. _all.OrderBy(e => e.Until.Entry).ThenBy(e => e.WasBy.Entry)];

    /// <summary>Takes an entry.</summary>
    public void Take(RecordEntry entry, Stamped by)
    {
        foreach (RunEvent happened in entry.Events)
        {
            switch (happened)
            {
                case RunEvent.ReadingTaken e:
                    string text = $"{e.Reading.Value.ToDisplay()}{Telling.Places(e.Reading.Places)}";
                    string faults = e.Reading.Good ? "" : ", out of spec";
                    Next(e.Reading.Characteristic, e.At, text + faults, entry, by);
                    break;
                case RunEvent.FindingNoted e:
                    Next(tell.Plan.Steps[e.At.Step].FullName, e.At, e.Finding, entry, by);
                    break;
                case RunEvent.ChoiceMade e:
                    Next($"decided: {tell.Plan.Steps[e.At.Step].Subject}", e.At, e.Choice, entry, by);
                    break;
                case RunEvent.StepDone { Said.Length: > 0 } e:
                    Next(tell.Plan.Steps[e.At.Step].FullName, e.At, e.Said, entry, by);
                    break;
                case RunEvent.WayTaken { Kind: not (WayKind.Concession or WayKind.Scrap) } e:
                    Decide(e, by);
                    break;
                case RunEvent.WentStale e:
                    Stale(e, by);
                    break;
                default:
                    break;
            }
        }
    }

    private void Next(string about, At at, string text, RecordEntry entry, Stamped by)
    {
        (string, int) key = (about, at.Position);
        if (_last.TryGetValue(key, out Standing? before))
        {
            string cause = before.Cause.Length > 0 ? before.Cause : Why(before, at, entry);
            string place = tell.Plan.PositionName(at.Position);
            _all.Add(new Earlier(about, place, before.Text, before.By, cause, before.Until ?? by, text, by));
        }

        _last[key] = new Standing(at, text, by);
    }

    // Nothing moved that it rests on: it was corrected, decided anew, cut on, or the next step wanted it fresh.
    private string Why(Standing before, At at, RecordEntry entry) =>
        entry.Events.OfType<RunEvent.EntryCorrected>().Any(c => c.At == at) ? "corrected"
        : entry.Events.OfType<RunEvent.WayTaken>().FirstOrDefault() is { } way ? $"decided: {way.Way}"
        : tell.Plan.Steps[at.Step].Work is StepWork.Cut ? "the cut went on"
        : before.At.Step != at.Step ? $"asked for again by {tell.Plan.Steps[at.Step].FullName}"
        : "taken again";

    // A result that was decided about is replaced by what comes of the decision.
    private void Decide(RunEvent.WayTaken way, Stamped by)
    {
        foreach (Standing standing in _last.Values.Where(s => s.At == way.At && s.Until is null))
        {
            (standing.Cause, standing.Until) = ($"decided: {way.Way}", by);
        }
    }

    private void Stale(RunEvent.WentStale stale, Stamped by)
    {
        foreach (StaleItem item in stale.Items)
        {
            string about =
                item.Characteristic >= 0
                    ? tell.Plan.Procedure.Characteristics[item.Characteristic].Name
                    : tell.Plan.Steps[item.Step].FullName;
            if (_last.TryGetValue((about, item.Position), out Standing? known) && known.Until is null)
            {
                (known.Cause, known.Until) = (stale.Cause, by);
            }
        }
    }

    private sealed class Standing(At at, string text, Stamped by)
    {
        public At At { get; } = at;

        public string Text { get; } = text;

        public Stamped By { get; } = by;

        public string Cause { get; set; } = "";

        public Stamped? Until { get; set; }
    }
}
