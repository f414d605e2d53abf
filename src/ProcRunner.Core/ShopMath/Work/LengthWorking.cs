using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>A <see cref="Working"/> most of whose steps are lengths.</summary>
internal sealed class LengthWorking(WorkArguments arguments)
{
    private readonly Working _working = new(arguments);

    /// <summary>A length that is a result.</summary>
    public LengthWorking And(string name, string formula, double millimetres, bool isResult = true)
    {
        _working.Step(name, formula, millimetres, Units.Millimetre, Units.Inch, isResult);
        return this;
    }

    /// <summary>An exact length.</summary>
    public LengthWorking And(string name, string formula, Exact length, bool isResult = true)
    {
        _working.Step(name, formula, length, Units.Millimetre, Units.Inch, isResult);
        return this;
    }

    /// <summary>What may be used up: shown cut down, so that the figure shown never passes the limit.</summary>
    public LengthWorking Room(string name, string formula, Exact length, bool isResult = true) =>
        Cut(name, formula, length, Rounding.Down, isResult);

    /// <summary>As the other, in mm.</summary>
    public LengthWorking Room(string name, string formula, double millimetres)
    {
        _working.Step(name, formula, millimetres, Units.Millimetre, Units.Inch, rounding: Rounding.Down);
        return this;
    }

    /// <summary>What is needed at least: shown cut up, so that the figure shown is enough.</summary>
    public LengthWorking Need(string name, string formula, Exact length) =>
        Cut(name, formula, length, Rounding.Up, isResult: true);

    /// <summary>An amount in a unit of its own.</summary>
    public LengthWorking In(Unit unit, string name, string formula, double value)
    {
        _working.Step(name, formula, value, unit, unit);
        return this;
    }

    /// <summary>Words.</summary>
    public LengthWorking Say(string name, string formula, string words)
    {
        _working.Say(name, formula, words);
        return this;
    }

    /// <summary>The answer, or the first fault met.</summary>
    public ShopResult<WorkAnswer> Done() => _working.Done();

    private LengthWorking Cut(string name, string formula, Exact length, Rounding rounding, bool isResult)
    {
        _working.Step(name, formula, length, Units.Millimetre, Units.Inch, isResult, rounding);
        return this;
    }
}
