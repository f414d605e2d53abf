using System.Text;
using ProcRunner.People;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Shop;
using ProcRunner.Trail;

namespace ProcRunner.Testing;

/// <summary>Arbitrary values, always the same ones, for tests to which it doesn't matter which. All invented.</summary>
public static class Some
{
    /// <summary>A moment, UTC, with milliseconds.</summary>
    public static DateTimeOffset Time { get; } = new(2031, 5, 6, 7, 8, 9, 120, TimeSpan.Zero);

    /// <summary>A job's id.</summary>
    public static string Job => "abcdefghijklmnopqrstuvwxyz";

    /// <summary>A dial gauge that turns over and is calibrated by date.</summary>
    public static Gauge Gauge { get; } =
        new(
            "D7",
            "depth gauge (invented)",
            "depth gauge",
            Quantity("0.0005 in"),
            Quantity("0.0004 in"),
            Quantity("0.1 in"),
            new DateOnly(2032, 1, 31)
        );

    /// <summary>A quantity, written as in a trail: <c>0.0520 in</c>.</summary>
    /// <exception cref="ArgumentException">The text is none.</exception>
    public static Quantity Quantity(string text) =>
        Quantities.Quantity.TryParse(text, out Quantity quantity)
            ? quantity
            : throw new ArgumentException($"\"{text}\" is no quantity.", nameof(text));

    /// <summary>The digest of a text: another text, another digest.</summary>
    public static Digest Digest(string of) => Trail.Digest.Of(Encoding.UTF8.GetBytes(of));

    /// <summary>A person whose key and certificate are texts that look the part and check nowhere.</summary>
    public static Person Person(string id, Role role = Role.Operator) =>
        new(id, NameOf(id), role, Base64("public key of " + id), Wrapped(id), "ada", Base64("certificate of " + id));

    /// <summary>A wrapped key that opens with no PIN.</summary>
    public static WrappedKey Wrapped(string id) =>
        new(600_000, Base64("salt of " + id), Base64("nonce of " + id), Base64("sealed key of " + id));

    /// <summary>A person's mark with a signature that checks nowhere.</summary>
    public static Mark Mark(string person) => new(person, NameOf(person), Time, Base64("signature of " + person));

    private static string NameOf(string id) => $"{char.ToUpperInvariant(id[0])}. Example (invented)";

    private static string Base64(string text) => Convert.ToBase64String(Encoding.UTF8.GetBytes(text));
}
