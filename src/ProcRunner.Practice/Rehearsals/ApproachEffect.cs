using ProcRunner.Quantities;

namespace ProcRunner.Practice.Rehearsals;

/// <summary>What heads come to with another approach allowance and a gauge that errs more or less.</summary>
/// <param name="Setting">The setting that holds the allowance.</param>
/// <param name="Allowance">The allowance.</param>
/// <param name="Gauge">The kind of gauge that ends the cut.</param>
/// <param name="Times">How many times its error.</param>
/// <param name="IsNow">True for the allowance and the gauge as they are.</param>
/// <param name="Steps">Indices of the cuts that take the allowance from the setting.</param>
/// <param name="Tally">What came of it.</param>
public sealed record ApproachEffect(
    string Setting,
    Quantity Allowance,
    string Gauge,
    double Times,
    bool IsNow,
    IReadOnlyList<int> Steps,
    Tally Tally
)
{
    /// <summary>Those cuts, taken together.</summary>
    public CutCount Cuts
    {
        get
        {
            CutCount all = new();
            foreach (int step in Steps.Where(Tally.CutsAt.ContainsKey))
            {
                all.Add(Tally.CutsAt[step]);
            }

            return all;
        }
    }
}
