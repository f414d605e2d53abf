using ProcRunner.Problems;
using ProcRunner.Shop;

namespace ProcRunner.Lessons;

/// <summary>A gauge of the shop and how it really behaves; amounts in the unit of its resolution.</summary>
/// <param name="Gauge">As the shop knows it.</param>
/// <param name="Bias">How much it reads too much, always.</param>
/// <param name="Spread">Standard deviation of its own repeatability.</param>
/// <param name="Feel">Standard deviation of the operator's touch.</param>
/// <param name="WrongTurns">How often it is read one turn of its thimble off, of 1.</param>
/// <param name="NotZeroed">How often it is used without being zeroed, of 1.</param>
/// <param name="NotZeroedBy">By how much it is off then.</param>
public sealed record GaugeCharacter(
    Gauge Gauge,
    double Bias,
    double Spread,
    double Feel,
    double WrongTurns,
    double NotZeroed,
    double NotZeroedBy
)
{
    /// <summary>Where it stands in its file.</summary>
    public Place Source { get; init; }

    /// <summary>By how much the pilot is bent that it turns about.</summary>
    public double PilotBend { get; init; }

    /// <summary>How often the seat under it is dirty when it is read, of 1; wiped, and read again, it is another chance.</summary>
    public double DirtySeats { get; init; }

    /// <summary>By how much it reads too little then.</summary>
    public double DirtBy { get; init; }

    /// <summary>How it shows what it measures; null: as its turn has it, figures where nothing turns.</summary>
    public FaceKind? Face { get; init; }

    /// <summary>The standard uncertainty of one reading, resolution included (JCGM 100:2008, 4.3.7: a step d adds d/sqrt(12)); slips left out.</summary>
    public double Standard()
    {
        double step = (double)Gauge.Resolution.Value;
        return Math.Sqrt((Bias * Bias) + (Spread * Spread) + (Feel * Feel) + (step * step / 12));
    }
}
