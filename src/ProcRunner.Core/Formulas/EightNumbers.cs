using System.Runtime.CompilerServices;
using ProcRunner.Quantities;

namespace ProcRunner.Formulas;

/// <summary>Room for the values of a function, on the stack; no function with a fixed count takes more.</summary>
[InlineArray(Count)]
internal struct EightNumbers
{
    public const int Count = 8;

    private Rational _first;
}
