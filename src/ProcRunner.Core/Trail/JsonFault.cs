using System.Globalization;
using System.Runtime.InteropServices;

namespace ProcRunner.Trail;

/// <summary>What keeps bytes from being canonical JSON, and where.</summary>
/// <param name="Kind">What is wrong.</param>
/// <param name="Offset">The first byte that doesn't fit, counted from 0.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct JsonFault(JsonFaultKind Kind, int Offset)
{
    /// <summary>The fault in plain words.</summary>
    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"byte {Offset}: {Kind switch
            {
                JsonFaultKind.NotUtf8 => "not UTF-8",
                JsonFaultKind.EndsTooSoon => "the text ends too soon",
                JsonFaultKind.Unexpected => "a byte that can't stand here",
                JsonFaultKind.DuplicateKey => "a key that stands twice",
                JsonFaultKind.KeysNotSorted => "a key out of order",
                JsonFaultKind.WrongEscape => "an escape that isn't the canonical one",
                JsonFaultKind.NotAWholeNumber => "a number that isn't whole",
                JsonFaultKind.NumberTooLarge => "a number of 2^53 or more",
                JsonFaultKind.TooDeep => "nested too deep",
                _ => "more text after the value",
            }}"
        );
}
