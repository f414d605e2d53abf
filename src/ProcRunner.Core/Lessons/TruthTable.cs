namespace ProcRunner.Lessons;

/// <summary>True values and conditions, by name and place; the narrower place wins, the later table wins over the earlier.</summary>
public sealed class TruthTable
{
    /// <summary>Nothing said.</summary>
    public static TruthTable Empty { get; } = new();

    /// <summary>Measurable values.</summary>
    public Dictionary<TruthKey, TrueValue> Values { get; } = [];

    /// <summary>Conditions in words: <c>valve neck</c> is <c>nicked</c>, on so many of 1 (1: always).</summary>
    public Dictionary<TruthKey, TrueCondition> Conditions { get; } = [];

    /// <summary>This table with another's entries over it.</summary>
    public TruthTable With(TruthTable over)
    {
        TruthTable both = new();
        foreach (TruthTable table in new[] { this, over })
        {
            foreach ((TruthKey key, TrueValue value) in table.Values)
            {
                both.Values[key] = value;
            }

            foreach ((TruthKey key, TrueCondition word) in table.Conditions)
            {
                both.Conditions[key] = word;
            }
        }

        return both;
    }
}
