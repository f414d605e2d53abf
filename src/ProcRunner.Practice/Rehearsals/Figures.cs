using System.Globalization;
using ProcRunner.Quantities;
using ProcRunner.Runs;

namespace ProcRunner.Practice.Rehearsals;

/// <summary>How figures of a rehearsal are written.</summary>
internal static class Figures
{
    /// <summary>A count with marks between thousands.</summary>
    public static string N(long count) => count.ToString("#,0", CultureInfo.InvariantCulture);

    /// <summary>A share as a percentage, to as many places as it needs to be other than nothing.</summary>
    public static string Percent(double share)
    {
        double size = Math.Abs(share);
        string form =
            size is 0 or >= 0.01 ? "0.0"
            : size >= 0.0001 ? "0.00"
            : "0.0000";
        return (100 * share).ToString(form, CultureInfo.InvariantCulture) + " %";
    }

    /// <summary>A share.</summary>
    public static string Share(Proportion of) => of.Of == 0 ? "-" : Percent(of.Share);

    /// <summary>Between which ends a share lies, 95 times of 100.</summary>
    public static string Range(Proportion of)
    {
        (double low, double high) = of.Interval;
        return of.Of == 0 ? "-"
            : of.Part == 0 ? $"below {Percent(high)}"
            : of.Part == of.Of ? $"above {Percent(low)}"
            : $"{Percent(low)[..^2]} to {Percent(high)}";
    }

    /// <summary>A plain number.</summary>
    public static string Number(double value, string form) => value.ToString(form, CultureInfo.InvariantCulture);

    /// <summary>An amount in base units as a number in a unit.</summary>
    public static string In(double amount, Unit unit) =>
        Number((amount - unit.Offset.ToDouble()) / unit.Factor.ToDouble(), Form(Show.DigitsOf(unit) + 1));

    /// <summary>A size in base units as a number in a unit.</summary>
    public static string SizeIn(double size, Unit unit) =>
        Number(size / unit.Factor.ToDouble(), Form(Show.DigitsOf(unit) + 2));

    /// <summary>The unit in which a characteristic is shown.</summary>
    public static Unit UnitOf(Plan plan, int characteristic) =>
        plan.Procedure.Characteristics[characteristic].UnitOn(plan.Head);

    /// <summary>A characteristic and the kind of position.</summary>
    public static string NameOf(Plan plan, (int Characteristic, string Kind) key) =>
        $"{plan.Procedure.Characteristics[key.Characteristic].Name} {key.Kind}".TrimEnd();

    private static string Form(int digits) => "F" + digits.ToString(CultureInfo.InvariantCulture);
}
