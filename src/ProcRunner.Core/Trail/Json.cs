using System.Collections.Immutable;
using ProcRunner.Text;

namespace ProcRunner.Trail;

/// <summary>
/// A value as it stands in a trail. The family is closed and has no fractions: the only numbers are whole ones below
/// 2^53 in size, so that every reader of JSON sees the same value. A quantity is written as text.
/// </summary>
public abstract record Json
{
    /// <summary>2^53 - 1, the largest whole number that every JSON reader keeps exactly (RFC 7493, section 2.2).</summary>
    public const long LargestWhole = 9_007_199_254_740_991;

    /// <summary>Containers may stand this deep inside each other.</summary>
    public const int MaxDepth = 32;

    private Json() { }

    /// <summary>The value that says nothing.</summary>
    public static Json Nothing { get; } = new Null();

    /// <summary>A list of the values given.</summary>
    public static List ListOf(params ReadOnlySpan<Json> items) => new(ImmutableArray.Create(items));

    /// <summary>A map of the pairs given, in any order.</summary>
    /// <exception cref="ArgumentException">A key stands twice.</exception>
    public static Map MapOf(params ReadOnlySpan<(string Key, Json Value)> pairs) => new(pairs);

    private static string WellFormed(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return SafeText.IsWellFormed(text)
            ? text
            : throw new ArgumentException(
                "A lone surrogate can't be written as UTF-8; clean the text first.",
                nameof(text)
            );
    }

    /// <summary>A text. It is well-formed UTF-16.</summary>
    public sealed record Text : Json
    {
        /// <summary>Wraps a text.</summary>
        /// <exception cref="ArgumentException">The text holds a lone surrogate.</exception>
        public Text(string value) => Value = WellFormed(value);

        /// <summary>The text itself.</summary>
        public string Value { get; }
    }

    /// <summary>A whole number below 2^53 in size.</summary>
    public sealed record Whole : Json
    {
        /// <summary>Wraps a number.</summary>
        /// <exception cref="ArgumentOutOfRangeException">The number is 2^53 or more in size.</exception>
        public Whole(long value)
        {
            ArgumentOutOfRangeException.ThrowIfGreaterThan(value, LargestWhole);
            ArgumentOutOfRangeException.ThrowIfLessThan(value, -LargestWhole);
            Value = value;
        }

        /// <summary>The number itself.</summary>
        public long Value { get; }
    }

    /// <summary>Yes or no.</summary>
    public sealed record Flag(bool Value) : Json;

    /// <summary>The JSON null.</summary>
    public sealed record Null : Json;

    /// <summary>Values in their order.</summary>
    public sealed record List(ImmutableArray<Json> Items) : Json
    {
        /// <summary>True when the other list holds equal values in the same order.</summary>
        public bool Equals(List? other) => other is not null && Items.AsSpan().SequenceEqual(other.Items.AsSpan());

        /// <inheritdoc/>
        public override int GetHashCode() => Items.Length;
    }

    /// <summary>Named values, sorted by the UTF-16 code units of their names (RFC 8785, section 3.2.3).</summary>
    public sealed record Map : Json
    {
        /// <summary>Sorts the pairs given.</summary>
        /// <exception cref="ArgumentException">A key stands twice or holds a lone surrogate.</exception>
        public Map(ReadOnlySpan<(string Key, Json Value)> pairs)
        {
            var sorted = ImmutableArray.CreateBuilder<KeyValuePair<string, Json>>(pairs.Length);
            foreach ((string key, Json value) in pairs)
            {
                sorted.Add(new(WellFormed(key), value));
            }

            sorted.Sort(static (a, b) => string.CompareOrdinal(a.Key, b.Key));
            for (int i = 1; i < sorted.Count; i++)
            {
                if (string.Equals(sorted[i - 1].Key, sorted[i].Key, StringComparison.Ordinal))
                {
                    throw new ArgumentException($"The key \"{sorted[i].Key}\" stands twice.", nameof(pairs));
                }
            }

            Items = sorted.DrainToImmutable();
        }

        /// <summary>The pairs in canonical order.</summary>
        public ImmutableArray<KeyValuePair<string, Json>> Items { get; }

        /// <summary>The value under a key, null when there is none.</summary>
        public Json? this[string key]
        {
            get
            {
                int low = 0;
                int high = Items.Length - 1;
                while (low <= high)
                {
                    int middle = (low + high) / 2;
                    int order = string.CompareOrdinal(Items[middle].Key, key);
                    if (order == 0)
                    {
                        return Items[middle].Value;
                    }

                    (low, high) = order < 0 ? (middle + 1, high) : (low, middle - 1);
                }

                return null;
            }
        }

        /// <summary>The text under a key, null when there is none or it isn't a text.</summary>
        public string? TextAt(string key) => (this[key] as Text)?.Value;

        /// <summary>The whole number under a key, null when there is none or it isn't one.</summary>
        public long? WholeAt(string key) => (this[key] as Whole)?.Value;

        /// <summary>The flag under a key, null when there is none or it isn't one.</summary>
        public bool? FlagAt(string key) => (this[key] as Flag)?.Value;

        /// <summary>True when the other map holds equal values under the same keys.</summary>
        public bool Equals(Map? other) => other is not null && Items.AsSpan().SequenceEqual(other.Items.AsSpan());

        /// <inheritdoc/>
        public override int GetHashCode() => Items.Length;
    }
}
