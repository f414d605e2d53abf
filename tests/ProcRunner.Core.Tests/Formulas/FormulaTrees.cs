using System.Globalization;
using System.Numerics;
using FsCheck;
using FsCheck.Fluent;

namespace ProcRunner.Core.Tests.Formulas;

/// <summary>Random formulas that hold.</summary>
public static class FormulaTrees
{
    private static readonly (string Name, decimal Inches)[] Inputs =
    [
        ("aim", 0.052m),
        ("depth.front", 0.0231m),
        ("depth rear", 0.0575m),
        ("bore", 1.4995m),
    ];

    /// <summary>A formula of bare numbers with its value as an unreduced ratio; below is 0 if it divides by zero.</summary>
    /// <param name="Text">The formula.</param>
    /// <param name="Binding">How tightly its last operator binds: 1 sum, 2 product, 3 sign or value.</param>
    /// <param name="Above">Above the line.</param>
    /// <param name="Below">Below the line.</param>
    public sealed record Sum(string Text, int Binding, BigInteger Above, BigInteger Below)
    {
        public override string ToString() => Text;
    }

    /// <summary>A formula that gives a length, with its constants in inches and the same in millimetres.</summary>
    /// <param name="Inches">With constants in inches.</param>
    /// <param name="Millimetres">With constants in millimetres.</param>
    public sealed record Typed(string Inches, string Millimetres)
    {
        public override string ToString() => $"{Inches} | {Millimetres}";

        public Typed Map(string before, string after) => new(before + Inches + after, before + Millimetres + after);

        public Typed Join(string between, Typed other) =>
            new(Inches + between + other.Inches, Millimetres + between + other.Millimetres);
    }

    public static Arbitrary<Sum> Sums() => Arb.From(Gen.Sized(size => OfSum(Math.Min(size, 12))));

    public static Arbitrary<Typed> Formulas() => Arb.From(Gen.Sized(size => OfLength(Math.Min(size, 8))));

    internal static Bench Readings(Func<decimal, string> entered) =>
        Inputs.Aggregate(Bench.Empty, (bench, input) => bench.With(input.Name, entered(input.Inches)));

    internal static string Plain(decimal value) =>
        value.ToString("0.############################", CultureInfo.InvariantCulture);

    private static Gen<Sum> OfSum(int size) =>
        size <= 1
            ? Number()
            : Gen.OneOf(
                Number(),
                Pair(size, "+", 1, (a, b) => ((a.Above * b.Below) + (b.Above * a.Below), a.Below * b.Below)),
                Pair(size, "-", 1, (a, b) => ((a.Above * b.Below) - (b.Above * a.Below), a.Below * b.Below)),
                Pair(size, "*", 2, (a, b) => (a.Above * b.Above, a.Below * b.Below)),
                Pair(size, "/", 2, (a, b) => (a.Above * b.Below, a.Below * b.Above)),
                OfSum(size - 1).Select(a => new Sum("-" + Grouped(a, a.Binding < 3), 3, -a.Above, a.Below))
            );

    private static Gen<Sum> Number() =>
        from whole in Gen.Choose(0, 30)
        from places in Gen.Choose(0, 3)
        let text = (whole / (decimal)Math.Pow(10, places)).ToString("F" + places, CultureInfo.InvariantCulture)
        let digits = BigInteger.Parse(text.Replace(".", "", StringComparison.Ordinal), CultureInfo.InvariantCulture)
        select new Sum(text, 3, digits, BigInteger.Pow(10, places));

    private static Gen<Sum> Pair(
        int size,
        string sign,
        int binding,
        Func<Sum, Sum, (BigInteger Above, BigInteger Below)> work
    ) =>
        from left in OfSum(size / 2)
        from right in OfSum(size - (size / 2))
        from blanks in Gen.Elements("", " ", "  ")
        let value = work(left, right)
        select new Sum(
            Grouped(left, left.Binding < binding) + blanks + sign + blanks + Grouped(right, right.Binding <= binding),
            binding,
            value.Above,
            left.Below.IsZero || right.Below.IsZero ? BigInteger.Zero : value.Below
        );

    private static string Grouped(Sum sum, bool grouped) => grouped ? $"({sum.Text})" : sum.Text;

    // Built when drawn: built beforehand, the branches of all branches would never end.
    private static Gen<Typed> Later(int size) => Gen.Constant(size).SelectMany(OfLength);

    private static Gen<Typed> OfLength(int size) =>
        size <= 1
            ? Gen.OneOf(Name(), Constant())
            : Gen.OneOf(
                Name(),
                Two(size, "(", " + ", ")"),
                Two(size, "(", " - ", ")"),
                Two(size, "min(", ", ", ")"),
                Two(size, "max(", ", ", ")"),
                Two(size, "mean(", ", ", ")"),
                Two(size, "spread(", ", ", ")"),
                Two(size, "else(", ", ", ")"),
                Two(size, "sqrt(", " * ", ")"),
                Two(size, "roundto(", ", abs(", "))"),
                One(size, "-", ""),
                One(size, "abs(", ")"),
                One(size, "sink(", ", '45 deg')"),
                One(size, "diametergrowth(", ", '30 deg')"),
                One(size, "2 / 3 * ", ""),
                One(size, "hotfit(", ", '38 mm', '0.0000215 1/K', '0.0000117 1/K', '100 K')"),
                from condition in Two(size / 2, "if(", " <= ", ", ")
                from choice in Two(size / 2, "", ", ", ")")
                select condition.Join("", choice),
                from one in Two(size / 2, "", " * ", " / ")
                from other in Later(size / 2)
                select one.Join("", other.Map("(", ")"))
            );

    private static Gen<Typed> Name() =>
        Gen.Elements(Inputs).Select(input => new Typed($"[{input.Name}]", $"[{input.Name}]"));

    private static Gen<Typed> Constant() =>
        from tenths in Gen.Choose(-500, 20000)
        let inches = tenths / 10000m
        select new Typed($"'{Plain(inches)} in'", $"'{Plain(inches * 25.4m)} mm'");

    private static Gen<Typed> One(int size, string before, string after) =>
        Later(size - 1).Select(inner => inner.Map(before, after));

    private static Gen<Typed> Two(int size, string before, string between, string after) =>
        from left in Later(size / 2)
        from right in Later(size / 2)
        select left.Join(between, right).Map(before, after);
}
