using System.Globalization;
using System.Text.RegularExpressions;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Work;

/// <summary>
/// Every calculation of the catalogue, every value it asks for, and all of them at once: nothing, zero, below zero, huge, tiny, all
/// alike, in one line, one alone. An answer or a fault comes back, never an exception; no answer holds what is no number, and a fault
/// names the value at fault, says what was read and what is allowed.
/// </summary>
public partial class WorkHostileEachTests
{
    private const string Tiny = "0.0000000000000000000000000001";
    private const string Huge = "79228162514264337593543950335";

    private static readonly string[] Numbers =
    [
        "0",
        "-0.0",
        "-1",
        "-0.000001",
        Tiny,
        "-" + Tiny,
        Huge,
        "-" + Huge,
        "1",
        "90",
        "360",
        "1000000000",
    ];

    private static readonly string[] NoNumbers = ["", " ", ",", "NaN", "-Infinity", "\u221E", "1e5", "0x10", "x"];

    // How a list of so many values can be hostile.
    private static readonly Func<int, IEnumerable<string>>[] Lists =
    [
        _ => ["1"],
        _ => ["1", "2"],
        count => Enumerable.Repeat("0", count),
        count => Enumerable.Repeat("1", count),
        count => Enumerable.Repeat("-1", count),
        count => Enumerable.Repeat(Tiny, count),
        count => Enumerable.Repeat(Huge, count),
        count => Enumerable.Range(0, count).Select(Whole),
        count => Enumerable.Range(0, count).Select(at => "-" + Whole(at)),
        count => Enumerable.Range(0, count).Select(at => at % 2 == 0 ? Huge : "-" + Huge),
        count => Enumerable.Range(0, count).Select(at => at % 2 == 0 ? Huge : Tiny),
        count => Enumerable.Range(0, count).Select(at => at == 0 ? Tiny : "0"),
        count => Enumerable.Range(0, count).Select(at => at == count - 1 ? Huge : "1"),
        count => Enumerable.Range(0, count + 1).Select(Whole),
    ];

    public static TheoryData<string> Names => [.. WorkFunctions.All.Select(function => function.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void One_value_at_a_time(string name)
    {
        WorkFunction function = WorkFunctions.Find(name)!;
        foreach (WorkExample example in function.Examples)
        {
            foreach (WorkParameter parameter in function.Parameters)
            {
                string typed = example.Arguments.FirstOrDefault(one => one.Key == parameter.Name).Value ?? "";
                string unit = UnitOf(function, parameter, typed);
                IEnumerable<string> texts = Numbers
                    .Concat(Lists.Select(list => string.Join(' ', list(Count(typed)))))
                    .Select(number => $"{number} {unit}".TrimEnd())
                    .Concat(NoNumbers);
                foreach (string text in texts)
                {
                    Holds(
                        function,
                        [
                            .. example.Arguments.Where(one => one.Key != parameter.Name),
                            KeyValuePair.Create(parameter.Name, text),
                        ]
                    );
                }

                Holds(function, [.. example.Arguments.Where(one => one.Key != parameter.Name)]);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void All_values_at_once(string name)
    {
        WorkFunction function = WorkFunctions.Find(name)!;
        Holds(function, []);
        foreach (WorkExample example in function.Examples)
        {
            foreach (Func<int, IEnumerable<string>> list in Lists)
            {
                Holds(function, [.. example.Arguments.Select(one => Changed(function, one, list))]);
            }

            foreach (string number in Numbers)
            {
                Holds(function, [.. example.Arguments.Select(one => Changed(function, one, _ => [number]))]);
            }

            foreach (string text in NoNumbers)
            {
                Holds(function, [.. example.Arguments.Select(one => KeyValuePair.Create(one.Key, text))]);
            }
        }
    }

    // A word stays; a single value takes the first of the list.
    private static KeyValuePair<string, string> Changed(
        WorkFunction function,
        KeyValuePair<string, string> typed,
        Func<int, IEnumerable<string>> list
    )
    {
        WorkParameter parameter = function.Parameters.Single(one => one.Name == typed.Key);
        int most = parameter.Takes is WorkTakes.Amounts or WorkTakes.Alike { Most: > 1 } ? Count(typed.Value) : 1;
        return parameter.Takes is WorkTakes.Word
            ? typed
            : KeyValuePair.Create(
                typed.Key,
                $"{string.Join(' ', list(most).Take(most))} {UnitOf(function, parameter, typed.Value)}".TrimEnd()
            );
    }

    private static void Holds(WorkFunction function, IReadOnlyList<KeyValuePair<string, string>> given)
    {
        string call = $"{function.Name} {string.Join("; ", given.Select(one => $"{one.Key}={one.Value}"))}";
        bool known = false;
        WorkAnswer? answer = null;
        ShopFault? fault = null;
        Exception? thrown = Record.Exception(() => known = function.Answer(given).TryGet(out answer, out fault));
        Assert.True(thrown is null, $"{call}: {thrown}");
        if (known)
        {
            string shown = string.Join(
                ' ',
                answer!.Steps.SelectMany(step => step.Lines).Concat(answer.Results.Select(one => one.Text))
            );
            Assert.True(answer.Results.Count > 0, call);
            Assert.False(IsNoNumber(shown), $"{call}: {shown}");
            Assert.True(answer.Results.All(one => one.Text.Length > 0), call);
            return;
        }

        string[] named = [.. function.Parameters.Select(one => one.Name)];
        Assert.True(fault!.Argument.Split(" and ").All(named.Contains), $"{call}: {fault}");
        Assert.True(fault.Allowed.Any(char.IsLetter), $"{call}: {fault}");
        Assert.False(IsNoNumber(given.Aggregate(fault.Allowed, Without)), $"{call}: {fault}");
        Assert.True(SaysWhatWasRead(fault, given), $"{call}: {fault}");
    }

    // A message may quote what was typed.
    private static string Without(string text, KeyValuePair<string, string> given) =>
        given.Value.Length > 0 ? text.Replace(given.Value, "", StringComparison.Ordinal) : text;

    // As it was typed; nothing, or how many where the number of values is at fault; of several values the one at fault, with its unit.
    private static bool SaysWhatWasRead(ShopFault fault, IReadOnlyList<KeyValuePair<string, string>> given)
    {
        string[] names = fault.Argument.Split(" and ");
        string[] typed = [.. given.Where(one => names.Contains(one.Key)).Select(one => one.Value)];
        return fault.Read == "nothing"
            || typed.Any(text => fault.Read.Contains(text, StringComparison.Ordinal))
            || Counted().IsMatch(fault.Read)
            || (Measured().IsMatch(fault.Read) && (names.Length > 1 || typed.Any(text => Count(text) > 1)));
    }

    [GeneratedRegex("^(a line of )?[0-9]+ (values|readings|points)$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Counted();

    [GeneratedRegex("^-?[0-9.]+(E[+-][0-9]+)? [a-z0-9]+$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Measured();

    private static bool IsNoNumber(string text) =>
        text.Contains("NaN", StringComparison.Ordinal)
        || text.Contains("Infinity", StringComparison.Ordinal)
        || text.Contains('\u221E', StringComparison.Ordinal);

    private static string Whole(int value) => value.ToString(CultureInfo.InvariantCulture);

    private static int Count(string typed) => Math.Max(1, typed.Split(' ').Count(one => one.Any(char.IsAsciiDigit)));

    // The unit as typed, so that all of one kind stay of one kind; else the usual one.
    private static string UnitOf(WorkFunction function, WorkParameter parameter, string typed)
    {
        string last = typed.Split(' ')[^1];
        return last.Length > 0 && !last.Any(char.IsAsciiDigit) ? last
            : parameter.Takes is WorkTakes.Amount one ? one.Unit.Symbol
            : parameter.Takes is WorkTakes.Amounts several ? several.Unit.Symbol
            : parameter.Takes is WorkTakes.Alike
                ? function
                    .Parameters.Where(other => other.Takes is WorkTakes.Alike)
                    .Select(other =>
                        function.Examples[0].Arguments.FirstOrDefault(given => given.Key == other.Name).Value ?? ""
                    )
                    .Select(text => text.Split(' ')[^1])
                    .FirstOrDefault(text => text.Length > 0 && !text.Any(char.IsAsciiDigit), "")
            : "";
    }
}
