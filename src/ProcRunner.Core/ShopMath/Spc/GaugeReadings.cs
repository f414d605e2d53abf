namespace ProcRunner.ShopMath;

/// <summary>Readings of a gauge study: every appraiser reads every part as often.</summary>
public sealed class GaugeReadings
{
    private readonly IReadOnlyList<double> _all;

    private GaugeReadings(IReadOnlyList<double> all, int appraisers, int trials, int parts)
    {
        _all = all;
        Appraisers = appraisers;
        Trials = trials;
        Parts = parts;
    }

    /// <summary>How many people read.</summary>
    public int Appraisers { get; }

    /// <summary>How often each read each part.</summary>
    public int Trials { get; }

    /// <summary>How many parts were read.</summary>
    public int Parts { get; }

    /// <summary>A reading; all counted from 0.</summary>
    public double this[int appraiser, int trial, int part] => _all[(((appraiser * Trials) + trial) * Parts) + part];

    /// <summary>Mean of all.</summary>
    public double Mean => _all.Average();

    /// <summary>All of them.</summary>
    public IReadOnlyList<double> All => _all;

    /// <summary>
    /// From a row: all of the first appraiser, trial by trial, in each trial part by part; then the next appraiser. A
    /// fault names the count or the readings that don't fit.
    /// </summary>
    /// <param name="readings">All of one unit, finite: appraisers x trials x parts of them.</param>
    /// <param name="appraisers">2 or more.</param>
    /// <param name="trials">How often each read each part, 2 or more.</param>
    /// <param name="parts">2 or more.</param>
    public static ShopResult<GaugeReadings> Of(IReadOnlyList<double> readings, int appraisers, int trials, int parts)
    {
        foreach ((string name, int count) in new[] { ("appraisers", appraisers), ("trials", trials), ("parts", parts) })
        {
            if (count < 2)
            {
                return new ShopFault(name, Allowed.Show(count, ""), "it must be a whole number, 2 or more");
            }
        }

        return Allowed.Finite("readings", readings, "") is { } fault ? fault
            : readings.Count == (long)appraisers * trials * parts
                ? new GaugeReadings(readings, appraisers, trials, parts)
            : new ShopFault(
                "readings",
                FormattableString.Invariant($"{readings.Count} values"),
                FormattableString.Invariant(
                    $"{appraisers} appraisers x {trials} trials x {parts} parts are {(long)appraisers * trials * parts}"
                )
            );
    }

    /// <summary>Mean over trials and parts of an appraiser.</summary>
    public double MeanOfAppraiser(int appraiser) => MeanOf(one => one.Appraiser == appraiser);

    /// <summary>Mean over appraisers and trials of a part.</summary>
    public double MeanOfPart(int part) => MeanOf(one => one.Part == part);

    /// <summary>Mean over trials of an appraiser with a part.</summary>
    public double MeanOfCell(int appraiser, int part) => Row(appraiser, part).Average();

    /// <summary>Largest less smallest over the trials of an appraiser with a part.</summary>
    public double RangeOfCell(int appraiser, int part) => Row(appraiser, part).Max() - Row(appraiser, part).Min();

    private IEnumerable<double> Row(int appraiser, int part) =>
        Enumerable.Range(0, Trials).Select(trial => this[appraiser, trial, part]);

    private double MeanOf(Func<(int Appraiser, int Part), bool> isWanted) =>
        Enumerable
            .Range(0, _all.Count)
            .Where(at => isWanted((at / (Trials * Parts), at % Parts)))
            .Average(at => _all[at]);
}
