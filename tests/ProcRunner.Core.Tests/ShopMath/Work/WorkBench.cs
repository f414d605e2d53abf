using System.Globalization;
using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Work;

/// <summary>Works calculations out by name, from arguments as they are typed.</summary>
internal static class WorkBench
{
    public static WorkAnswer Answer(string function, string given)
    {
        bool known = Try(function, given).TryGet(out WorkAnswer? answer, out ShopFault? fault);
        Assert.True(known, $"{function} {given}: {fault}");
        return answer!;
    }

    public static ShopFault Fault(string function, string given)
    {
        bool known = Try(function, given).TryGet(out WorkAnswer? answer, out ShopFault? fault);
        Assert.False(known, $"{function} {given}: {answer?.Results[0]}");
        return fault!;
    }

    /// <summary>Holds that the answer has these results, each rounded to the places that the expectation shows.</summary>
    public static void Gives(string function, string given, string gives)
    {
        WorkAnswer answer = Answer(function, given);
        IReadOnlyList<KeyValuePair<string, string>> expected = new WorkExample("", gives, "").Results;
        Assert.NotEmpty(expected);
        foreach ((string name, string text) in expected)
        {
            WorkFigure? figure = answer.Find(name);
            Assert.True(figure is not null, $"{function}: no {name} among {string.Join(", ", answer.Results)}");
            if (figure.Value is not { } value)
            {
                Assert.Equal(text, figure.Text);
                continue;
            }

            Assert.True(Quantity.TryParse(text, out Quantity wanted), text);
            Assert.True(
                value.TryConvert(wanted.Unit, wanted.Value.Scale, Rounding.Nearest, out Quantity rounded),
                string.Create(CultureInfo.InvariantCulture, $"{name}: {value} is no {wanted.Dimension}")
            );
            Assert.Equal($"{name}={text}", $"{name}={rounded}");
        }
    }

    private static ShopResult<WorkAnswer> Try(string function, string given)
    {
        Assert.NotNull(WorkFunctions.Find(function));
        return WorkFunctions.Find(function)!.Answer(new WorkExample(given, "", "").Arguments);
    }
}
