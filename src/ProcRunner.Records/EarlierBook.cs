using ProcRunner.Records.Story;
using ProcRunner.Runs;

namespace ProcRunner.Records;

/// <summary>Follows every reading, finding and choice through all that took its place.</summary>
internal sealed class EarlierBook(Telling tell)
{
    private readonly Dictionary<(string About, int Position), (string Text, Stamped By, string Cause)> _last = [];
    private readonly List<Earlier> _all = [];

    /// <summary>All of them, in the order they were overtaken.</summary>
    public IReadOnlyList<Earlier> All => _all;

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
                    Next(e.Reading.Characteristic, e.At.Position, text + faults, by);
                    break;
                case RunEvent.FindingNoted e:
                    Next(tell.Plan.Steps[e.At.Step].FullName, e.At.Position, e.Finding, by);
                    break;
                case RunEvent.ChoiceMade e:
                    Next($"decided: {tell.Plan.Steps[e.At.Step].Subject}", e.At.Position, e.Choice, by);
                    break;
                case RunEvent.StepDone { Said.Length: > 0 } e:
                    Next(tell.Plan.Steps[e.At.Step].FullName, e.At.Position, e.Said, by);
                    break;
                case RunEvent.WentStale e:
                    Stale(e);
                    break;
                default:
                    break;
            }
        }
    }

    private void Next(string about, int position, string text, Stamped by)
    {
        if (_last.TryGetValue((about, position), out (string Text, Stamped By, string Cause) before))
        {
            _all.Add(
                new Earlier(about, tell.Plan.PositionName(position), before.Text, before.By, before.Cause, text, by)
            );
        }

        _last[(about, position)] = (text, by, "");
    }

    private void Stale(RunEvent.WentStale stale)
    {
        foreach (StaleItem item in stale.Items)
        {
            string about =
                item.Characteristic >= 0
                    ? tell.Plan.Procedure.Characteristics[item.Characteristic].Name
                    : tell.Plan.Steps[item.Step].FullName;
            if (_last.TryGetValue((about, item.Position), out (string Text, Stamped By, string Cause) known))
            {
                _last[(about, item.Position)] = known with { Cause = stale.Cause };
            }
        }
    }
}
