using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Formulas;

/// <summary>A call of one of the shop's calculations, its arguments proved: which values belong to which argument.</summary>
internal sealed record FormulaWorkCall(
    WorkFunction Function,
    WorkGives Gives,
    IReadOnlyList<FormulaWorkCall.Argument> Arguments
)
{
    /// <summary>One argument.</summary>
    /// <param name="Parameter">What it is for.</param>
    /// <param name="Dimensions">Of each of its values; none for a word.</param>
    /// <param name="Word">Its word, which stands in the formula; else empty.</param>
    internal sealed record Argument(WorkParameter Parameter, IReadOnlyList<Dimension> Dimensions, string Word);

    /// <summary>The result from the values of all arguments, one after the other and all known.</summary>
    public FormulaCell Of(ReadOnlySpan<FormulaCell> values)
    {
        List<(WorkParameter, IReadOnlyList<Exact>, string)> given = [];
        foreach (Argument argument in Arguments)
        {
            List<Exact> amounts = [];
            foreach (Dimension dimension in argument.Dimensions)
            {
                amounts.AddRange(
                    values[0].Value is FormulaValue.Many many ? many.Values : [new Exact(values[0].Number, dimension)]
                );
                values = values[1..];
            }

            given.Add((argument.Parameter, amounts, argument.Word));
        }

        return WorkArguments.Of(given).Then(Function.Answer).TryGet(out WorkAnswer? answer, out ShopFault? fault)
            ? Of(answer)
            : FormulaCell.Impossible(fault.ToString());
    }

    private FormulaCell Of(WorkAnswer answer) =>
        answer.Find(Gives.Name) switch
        {
            null => FormulaCell.Impossible(
                $"{Function.Name} gives no {Gives.Name} for these values, only "
                    + string.Join(", ", answer.Results.Select(one => one.ToString()))
            ),
            { Amount: { } amount } => FormulaCell.Of(FormulaNumberOf(amount)),
            { } words => FormulaCell.Of(new FormulaValue.Word(words.Text)),
        };

    private static FormulaNumber FormulaNumberOf(Exact amount) => amount.Value;
}
