namespace ProcRunner.Runs;

/// <summary>What was entered last at a step, in words.</summary>
public static class SaidAt
{
    /// <summary>True when the last entry at a cut was a pass rather than a reading.</summary>
    public static bool LastWasPass(StepRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        return record.Cut is { } cut && cut.Travel != cut.TravelAtReading;
    }

    /// <summary>The readout after a pass; the reading, place by place; otherwise what was said.</summary>
    public static string Of(StepRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        return LastWasPass(record) ? $"readout {record.Cut!.Readout}"
            : record.Readings.Count == 0 ? record.Said
            : record.Readings[^1] is { Places.Count: > 1 } reading ? PlacesText.Of(reading)
            : record.Readings[^1].Value.ToString();
    }
}
