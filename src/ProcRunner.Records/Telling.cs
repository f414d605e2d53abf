using System.Collections.Immutable;
using ProcRunner.People;
using ProcRunner.Quantities;
using ProcRunner.Runs;

namespace ProcRunner.Records;

/// <summary>The words and stamps that all parts of a record share.</summary>
internal sealed class Telling(RecordSource source)
{
    private readonly ImmutableSortedDictionary<string, Person> _people = source.Shop.People;

    /// <summary>The plan.</summary>
    public Plan Plan { get; } = source.State.Plan;

    /// <summary>A whole number as text.</summary>
    public static string Number(long number) => number.ToString(System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>The name of a person.</summary>
    public string NameOf(string id) => _people.TryGetValue(id, out Person? person) ? person.Name : id;

    /// <summary>Who made an entry, and when.</summary>
    public Stamped Stamp(RecordEntry entry) =>
        new(
            entry.Entry.Sequence,
            entry.Entry.Operator,
            NameOf(entry.Entry.Operator),
            entry.Entry.At.ToOffset(entry.Entry.Offset)
        );

    /// <summary>Who made the entry of a number, and when.</summary>
    public Stamped Stamp(long sequence) => Stamp(source.Entries[(int)sequence - 1]);

    /// <summary>A reading in words: <c>recession 0.0697 in (front 0.0697, right 0.0694, ...)</c>.</summary>
    public static string Reading(TakenReading reading)
    {
        string worked = string.Concat(reading.Worked.Select(w => $"; {w.Name} {w.Value.ToDisplay()}"));
        return $"{reading.Characteristic} {reading.Value.ToDisplay()}{Places(reading.Places)}{worked}";
    }

    /// <summary>The places of a reading in brackets; empty for a single value.</summary>
    public static string Places(IReadOnlyList<PlaceValue> places) =>
        places.Count < 2
            ? ""
            : $" ({string.Join(", ", places.Select(p => $"{p.Place} {p.Value.Value.ToString(null, System.Globalization.CultureInfo.InvariantCulture)}"))})";

    /// <summary>Limits in words: <c>low 0.0490 in, aim 0.0550 in, high 0.0610 in</c>; empty when there are none.</summary>
    public static string Window(Judgement window) => Window(window.Low, window.Aim, window.High);

    /// <summary>Limits in words.</summary>
    public static string Window(Quantity? low, Quantity? aim, Quantity? high)
    {
        IEnumerable<string> ends = new (string Word, Quantity? End)[] { ("low", low), ("aim", aim), ("high", high) }
            .Where(e => e.End is not null)
            .Select(e => $"{e.Word} {e.End!.Value.ToDisplay()}");
        return string.Join(", ", ends);
    }

    /// <summary>What an event left behind, in words; empty for one that leaves no result.</summary>
    public static string Result(RunEvent happened) =>
        happened switch
        {
            RunEvent.ReadingTaken e => Reading(e.Reading),
            RunEvent.FindingNoted e => e.Finding,
            RunEvent.ChoiceMade e => e.Choice,
            RunEvent.StepDone e => e.Said.Length > 0 ? e.Said : "done",
            RunEvent.PartFitted e => $"{e.Part} {e.Number}, lot {e.Lot}",
            RunEvent.ZeroSet e => $"readout set to {e.Zero.Set}",
            RunEvent.PassCut e => $"readout {e.Progress.Readout}",
            RunEvent.LeftOut e => $"left out: {e.Reason}",
            RunEvent.LeavingOutTakenBack e => $"not left out after all: {e.Reason}",
            _ => "",
        };
}
