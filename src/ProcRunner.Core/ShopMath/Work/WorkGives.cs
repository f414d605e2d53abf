using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>A result that a <see cref="WorkFunction"/> can give; not every answer has all of them.</summary>
/// <param name="Name">What it is, in words, as in <see cref="WorkFigure.Name"/>.</param>
public abstract record WorkGives(string Name)
{
    /// <summary>The name with hyphens for spaces, as it is written behind the function's name in a formula.</summary>
    public string Written => Name.Replace(' ', '-');

    /// <summary>Results of one dimension.</summary>
    public static IReadOnlyList<WorkGives> Of(Dimension dimension, params ReadOnlySpan<string> names)
    {
        WorkGives[] all = new WorkGives[names.Length];
        for (int i = 0; i < all.Length; i++)
        {
            all[i] = new Amount(names[i], dimension);
        }

        return all;
    }

    /// <summary>Results of the dimension of the arguments that take quantities of whatever kind.</summary>
    public static IReadOnlyList<WorkGives> Alike(params string[] names) => [.. names.Select(name => new OfAlike(name))];

    /// <summary>Results that are words.</summary>
    public static IReadOnlyList<WorkGives> Words(params string[] names) => [.. names.Select(name => new Text(name))];

    /// <summary>A quantity.</summary>
    /// <param name="Name">What it is.</param>
    /// <param name="Dimension">What is measured.</param>
    public sealed record Amount(string Name, Dimension Dimension) : WorkGives(Name)
    {
        /// <summary>The dimension in words.</summary>
        public override string ToString() => Dimension.ToString();
    }

    /// <summary>A quantity of the kind of the arguments.</summary>
    /// <param name="Name">What it is.</param>
    public sealed record OfAlike(string Name) : WorkGives(Name)
    {
        /// <summary>In words.</summary>
        public override string ToString() => "quantity of that kind";
    }

    /// <summary>Words.</summary>
    /// <param name="Name">What they say.</param>
    public sealed record Text(string Name) : WorkGives(Name)
    {
        /// <summary><c>text</c>.</summary>
        public override string ToString() => "text";
    }
}
