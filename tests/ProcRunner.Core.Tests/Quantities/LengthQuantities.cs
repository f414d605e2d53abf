using FsCheck;
using FsCheck.Fluent;
using ProcRunner.Quantities;

namespace ProcRunner.Tests.Quantities;

/// <summary>Values as they occur at a head: up to seven digits and eight places, in any unit, or in one of length.</summary>
public static class LengthQuantities
{
    public static Gen<Quantity> Of(IEnumerable<Unit> units) =>
        from digits in Gen.Choose(-9999999, 9999999)
        from places in Gen.Choose(0, 8)
        from unit in Gen.Elements(units.ToArray())
        select new Quantity(new decimal(Math.Abs(digits), 0, 0, digits < 0, (byte)places), unit);

    public static IEnumerable<Unit> Lengths => Units.All.Where(unit => unit.Dimension == Dimension.OfLength);
}
