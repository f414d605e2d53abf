namespace ProcRunner.ShopMath;

/// <summary>One calculation of the shop: what it asks for and gives, how it is worked out, and all that help says about it.</summary>
/// <remarks>
/// The record is the only place that knows the function: command line, help, page of docs and tests are driven by it. A family
/// is a folder with its calculations (typed, units in their names) and a table of these records over them. To add one, add a
/// record to a table that <see cref="WorkFunctions.All"/> lists. <see cref="WorkArguments"/> reads what was typed,
/// <see cref="Working"/> writes the steps, <see cref="ShopResult{T}"/> carries the answer or the fault.
/// </remarks>
public sealed record WorkFunction
{
    /// <summary>How it is typed: plain words of the trade with hyphens.</summary>
    public required string Name { get; init; }

    /// <summary>The family, in words, for a list.</summary>
    public required string Family { get; init; }

    /// <summary>What it is for, in a few words.</summary>
    public required string Summary { get; init; }

    /// <summary>What a person should know before relying on it.</summary>
    public required string Details { get; init; }

    /// <summary>What it asks for.</summary>
    public required IReadOnlyList<WorkParameter> Parameters { get; init; }

    /// <summary>Where the relation comes from.</summary>
    public required string Source { get; init; }

    /// <summary>Every result it can give, the one most asked for first.</summary>
    public required IReadOnlyList<WorkGives> Gives { get; init; }

    /// <summary>Why a formula can't call it, as a clause; null for all that one can.</summary>
    public string? NotInFormulas { get; init; }

    /// <summary>At least one example; all of them are worked out by a test.</summary>
    public required IReadOnlyList<WorkExample> Examples { get; init; }

    /// <summary>
    /// What the calculation behind it calls otherwise, and the parameter or parameters (<c>with and between</c>) it stems from, so
    /// that a fault names what was typed.
    /// </summary>
    public IReadOnlyList<KeyValuePair<string, string>> StemsFrom { get; init; } = [];

    /// <summary>Works it out.</summary>
    public required Func<WorkArguments, ShopResult<WorkAnswer>> Work { get; init; }

    /// <summary>Reads arguments as typed and works them out; a fault shows its value as it was typed.</summary>
    /// <param name="given">Name and text of each.</param>
    public ShopResult<WorkAnswer> Answer(IReadOnlyList<KeyValuePair<string, string>> given) =>
        WorkArguments.Read(Parameters, given).Then(Answer);

    /// <summary>Works arguments out that were read already; a fault shows its value as it was given.</summary>
    internal ShopResult<WorkAnswer> Answer(WorkArguments arguments)
    {
        ShopResult<WorkAnswer> answer = Work(arguments);
        return answer.TryGet(out _, out ShopFault? fault) ? answer : Named(fault, arguments);
    }

    private ShopFault Named(ShopFault fault, WorkArguments arguments)
    {
        string argument = StemsFrom.FirstOrDefault(one => one.Key == fault.Argument).Value ?? fault.Argument;
        WorkParameter? parameter = Parameters.FirstOrDefault(one => one.Name == argument || one.Words == argument);
        string? typed = parameter is null ? null : arguments.Texts.GetValueOrDefault(parameter.Name);

        // Of several values the one at fault says more than all of them.
        bool isOneOfSeveral = argument != fault.Argument && parameter?.Takes is WorkTakes.Amounts;
        return fault with
        {
            Argument = parameter?.Name ?? argument,
            Read = isOneOfSeveral ? fault.Read : typed ?? fault.Read,
        };
    }
}
