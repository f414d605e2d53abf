namespace ProcRunner.Runs;

/// <summary>What came of reading an entry as a measurement.</summary>
internal abstract record ReadingResult
{
    private ReadingResult() { }

    public sealed record Taken(TakenReading Reading, RunEvent.GaugeChosen? Gauge) : ReadingResult;

    public sealed record Questioned(RunEvent.EntryQuestioned Question) : ReadingResult;

    public sealed record Refused(Decision.Refused Why) : ReadingResult;
}
