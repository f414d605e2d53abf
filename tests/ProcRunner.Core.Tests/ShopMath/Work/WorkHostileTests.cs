using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Work;

/// <summary>Whatever a person types, an answer or a fault comes back, and no number in an answer is made up.</summary>
public class WorkHostileTests
{
    private static readonly string[] Numbers =
    [
        "0",
        "-0",
        "-1",
        "1",
        "2",
        "10",
        "90",
        "360",
        "0.5",
        "0.0000000000000000000000000001",
        "-0.001",
        "1000000",
        "-273.15",
        "-459.68",
        "999999999999",
        "-999999999999.999999999999999",
        "0.000000000000001",
        "79228162514264337593543950335",
        "-79228162514264337593543950335",
    ];

    private static readonly string[] Words =
    [
        "",
        " ",
        "x",
        "none",
        "H7",
        "0",
        "NaN",
        "1e9",
        "\u0000",
        "1 2 3 4 5 6 7 8 9",
    ];

    [Property(MaxTest = 3000)]
    public Property No_argument_makes_a_calculation_throw() =>
        Prop.ForAll(
            Calls().ToArbitrary(),
            call =>
            {
                WorkFunction function = WorkFunctions.Find(call.Function)!;
                bool known = function.Answer(call.Given).TryGet(out WorkAnswer? answer, out ShopFault? fault);
                Assert.NotEqual(known, fault is not null);
                if (!known)
                {
                    string[] named = [.. function.Parameters.Select(one => one.Name)];
                    Assert.True(
                        fault!.Argument.Split(" and ").All(named.Contains),
                        $"{fault.Argument} of {function.Name}: {fault}"
                    );
                    Assert.DoesNotMatch("NaN|Infinity|\u221E", fault.Read == "NaN" ? "" : fault.ToString());
                    Assert.NotEmpty(fault.Allowed);
                    return;
                }

                Assert.NotEmpty(answer!.Results);
                Assert.DoesNotMatch("NaN|Infinity|\u221E", string.Join(' ', answer.Steps.Select(step => step.Result)));
            }
        );

    // An example with one to three of its arguments replaced.
    private static Gen<Call> Calls() =>
        from function in Gen.Elements(WorkFunctions.All.ToArray())
        from example in Gen.Elements(function.Examples.ToArray())
        from count in Gen.Choose(1, 3)
        from changes in Gen.ArrayOf(Change(function), count)
        select new Call(
            function.Name,
            [
                .. example.Arguments.Where(one => changes.All(change => change.Key != one.Key)),
                .. changes.DistinctBy(change => change.Key),
            ]
        );

    private static Gen<KeyValuePair<string, string>> Change(WorkFunction function) =>
        from parameter in Gen.Elements(function.Parameters.ToArray())
        from text in Text(parameter.Takes)
        select KeyValuePair.Create(parameter.Name, text);

    private static Gen<string> Text(WorkTakes takes) =>
        takes switch
        {
            WorkTakes.Amount one => Gen.Frequency(
                (9, Gen.Elements(Numbers).Select(number => $"{number} {one.Unit.Symbol}".Trim())),
                (1, Gen.Elements(Words))
            ),
            WorkTakes.Amounts several => Gen.Frequency(
                (
                    9,
                    from count in Gen.Choose(1, 6)
                    from all in Gen.ArrayOf(Gen.Elements(Numbers), count)
                    select $"{string.Join(' ', all)} {several.Unit.Symbol}".Trim()
                ),
                (1, Gen.Elements(Words))
            ),
            WorkTakes.Alike alike => Gen.Frequency(
                (
                    9,
                    from count in Gen.Choose(1, alike.Most == 1 ? 1 : 6)
                    from all in Gen.ArrayOf(Gen.Elements(Numbers), count)
                    from unit in Gen.Elements("", "in", "mm", "lbf", "degC")
                    select $"{string.Join(' ', all)} {unit}".Trim()
                ),
                (1, Gen.Elements(Words))
            ),
            WorkTakes.Word word => Gen.Frequency((9, Gen.Elements(word.Choices.ToArray())), (1, Gen.Elements(Words))),
            _ => Gen.Elements(Words),
        };

    private sealed record Call(string Function, List<KeyValuePair<string, string>> Given)
    {
        public override string ToString() =>
            $"{Function} {string.Join("; ", Given.Select(one => $"{one.Key}={one.Value}"))}";
    }
}
