namespace ProcRunner.Runs;

/// <summary>A reading just taken, before it is part of the run, with what has been worked out from it so far.</summary>
/// <param name="Reading">The reading.</param>
/// <param name="Worked">The values worked out from it.</param>
internal sealed record JustTaken(TakenReading Reading, IReadOnlyList<WorkedValue> Worked)
{
    /// <summary>The new value of a characteristic, or null when it isn't among them.</summary>
    public KnownValue? Find(string characteristic)
    {
        if (characteristic == Reading.Characteristic)
        {
            return new KnownValue(Reading.Value, Reading.Places);
        }

        foreach (WorkedValue value in Worked)
        {
            if (value.Name == characteristic)
            {
                return new KnownValue(value.Value, []);
            }
        }

        return null;
    }
}
