using ProcRunner.Quantities;

namespace ProcRunner.Practice.Gauges;

/// <summary>One reading of a practice gauge.</summary>
/// <param name="Shown">What the gauge shows, to its resolution.</param>
/// <param name="True">What is true, in base units. The run and the trainee never see it.</param>
/// <param name="IsTurnOff">It is read one turn of its thimble off.</param>
/// <param name="IsDirty">Dirt lay on the seat.</param>
/// <param name="IsNotZeroed">It wasn't zeroed.</param>
/// <param name="IsBent">The pilot it turned about was bent.</param>
public readonly record struct GaugeReading(
    Quantity Shown,
    double True,
    bool IsTurnOff,
    bool IsNotZeroed,
    bool IsDirty,
    bool IsBent
)
{
    /// <summary>True when it is a slip rather than the gauge's own error.</summary>
    public bool IsSlip => IsTurnOff || IsNotZeroed || IsDirty || IsBent;

    /// <summary>How much more is shown than is true, in base units.</summary>
    public double Error => Exact.Of(Shown).Value.ToDouble() - True;
}
