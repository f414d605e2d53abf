using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>A <see cref="Working"/> of a function whose arguments are of whatever kind: results in the unit of the first.</summary>
internal sealed class AlikeWorking(WorkArguments arguments)
{
    private readonly Working _working = new(arguments);

    /// <summary>An amount in the arguments' unit.</summary>
    public AlikeWorking And(string name, string formula, double inUnit, bool isResult = true)
    {
        _working.Step(name, formula, inUnit, arguments.AlikeUnit, arguments.AlikeUnit, isResult);
        return this;
    }

    /// <summary>An exact amount of the arguments' kind.</summary>
    public AlikeWorking And(string name, string formula, Exact amount, bool isResult = true)
    {
        _working.Step(name, formula, amount, arguments.AlikeUnit, arguments.AlikeUnit, isResult);
        return this;
    }

    /// <summary>The end of a zone: its low end shown cut up, its high end cut down, so that neither lies outside it.</summary>
    public AlikeWorking End(string name, string formula, Exact amount, bool isHigh)
    {
        Unit unit = arguments.AlikeUnit;
        _working.Step(name, formula, amount, unit, unit, rounding: isHigh ? Rounding.Down : Rounding.Up);
        return this;
    }

    /// <summary>As the other, of a double in the arguments' unit.</summary>
    public AlikeWorking End(string name, string formula, double inUnit, bool isHigh)
    {
        Unit unit = arguments.AlikeUnit;
        _working.Step(name, formula, inUnit, unit, unit, rounding: isHigh ? Rounding.Down : Rounding.Up);
        return this;
    }

    /// <summary>A number in a unit of its own.</summary>
    public AlikeWorking In(Unit unit, string name, string formula, double value, bool isResult = true)
    {
        _working.Step(name, formula, value, unit, unit, isResult);
        return this;
    }

    /// <summary>Words.</summary>
    public AlikeWorking Say(string name, string formula, string words)
    {
        _working.Say(name, formula, words);
        return this;
    }

    /// <summary>The answer, or the first fault met.</summary>
    public ShopResult<WorkAnswer> Done() => _working.Done();

    /// <summary>An argument in the unit of all.</summary>
    public static double Value(WorkArguments all, string name) => all.In(name, all.AlikeUnit);

    /// <summary>As the other, or what holds where it was left out.</summary>
    public static double Value(WorkArguments all, string name, double without) => all.In(name, all.AlikeUnit, without);

    /// <summary>All values of an argument in the unit of all.</summary>
    public static double[] Values(WorkArguments all, string name) =>
        [.. all.Amounts(name).Select(one => one.In(all.AlikeUnit).ToDouble())];
}
