using System.Diagnostics.CodeAnalysis;

namespace ProcRunner.ShopMath;

/// <summary>What a calculation of the shop gives, or why it gives nothing. It never holds a number that isn't one.</summary>
public readonly record struct ShopResult<T>
{
    private readonly T? _value;

    // True only where a value was given, so that default is no result.
    private readonly bool _isKnown;

    private ShopResult(T? value, ShopFault? fault, bool isKnown)
    {
        _value = value;
        Fault = fault;
        _isKnown = isKnown;
    }

    /// <summary>What the calculation can't take; null when there is a value.</summary>
    public ShopFault? Fault { get; }

    /// <summary>The value, if there is one; else the fault.</summary>
    public bool TryGet([MaybeNullWhen(false)] out T value, [NotNullWhen(false)] out ShopFault? fault)
    {
        value = _value;
        fault = _isKnown ? null : Fault ?? new ShopFault("result", "nothing", "nothing was worked out");
        return _isKnown;
    }

    /// <summary>What another calculation makes of the value, or the same fault.</summary>
    public ShopResult<TNext> Then<TNext>(Func<T, ShopResult<TNext>> next) =>
        TryGet(out T? value, out ShopFault? fault) ? next(value) : fault;

    /// <summary>A value.</summary>
    public static implicit operator ShopResult<T>(T value) => new(value, null, isKnown: true);

    /// <summary>A fault.</summary>
    public static implicit operator ShopResult<T>(ShopFault fault) => new(default, fault, isKnown: false);
}
