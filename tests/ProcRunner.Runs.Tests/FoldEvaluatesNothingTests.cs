using System.Reflection;
using System.Reflection.Emit;
using ProcRunner.Formulas;

namespace ProcRunner.Runs.Tests;

/// <summary>Folding copies what the events say: it evaluates no formula, compares no limit, fires no machine.</summary>
public sealed class FoldEvaluatesNothingTests
{
    private static readonly string[] Forbidden =
    [
        nameof(Formula),
        "LimitFinder",
        "Judging",
        "RunScope",
        "ValueWorker",
        "Staleness",
        "Askers",
        "Targets",
        nameof(Outlook),
        nameof(RunMachines),
        "ReadoutMaths",
    ];

    /// <summary>Everything that <c>Apply</c> can reach in the core, read from its compiled code.</summary>
    [Fact]
    public void Nothing_that_Apply_reaches_decides_anything()
    {
        HashSet<MethodBase> reached = Reached(typeof(RunState).GetMethod(nameof(RunState.Apply))!);

        Assert.Contains(reached, method => method.Name == "Keep"); // the walk goes into private methods
        Assert.DoesNotContain(reached, method => Forbidden.Any(name => Owner(method.DeclaringType!).Name == name));
    }

    /// <summary>The same walk finds what it must where there is something to find.</summary>
    [Fact]
    public void The_same_walk_from_Decide_finds_them() =>
        Assert.Superset(
            Forbidden.ToHashSet(),
            Reached(typeof(RunDecider).GetMethods().First(method => method.Name == nameof(RunDecider.Decide)))
                .Select(method => Owner(method.DeclaringType!).Name)
                .ToHashSet()
        );

    /// <summary>A trail folded under limits and formulas that were edited afterwards gives the verdicts of the day.</summary>
    [Fact]
    public void Edited_limits_and_formulas_change_no_recorded_verdict()
    {
        Rig rig = new(SmallWork.Procedure, SmallWork.Head);
        rig.Until("stem height 1E");
        Plan edited = Rig.PlanOf(
            SmallWork
                .Procedure.Replace(
                    "[guide bore.largest] - [stem]",
                    "[guide bore.smallest] - 2 * [stem]",
                    StringComparison.Ordinal
                )
                .Replace("shift: \"[planned skim] - else([skim taken], '0 in')\"", "", StringComparison.Ordinal)
                .Replace(
                    "only-where: \"[decided.guide] = 'replace'\"",
                    "only-where: \"[cylinder] < 0\"",
                    StringComparison.Ordinal
                ),
            SmallWork
                .Head.Replace(
                    "low: 0.046, aim: 0.052, high: 0.058",
                    "low: 0.1, aim: 0.2, high: 0.3",
                    StringComparison.Ordinal
                )
                .Replace("high: 0.0050", "high: 0.0016", StringComparison.Ordinal)
                .Replace("aim: 0.0022, ", "", StringComparison.Ordinal)
        );

        Assert.Equal(StateDump.Of(rig.State), StateDump.Of(rig.Replay(edited)));
        Assert.Equal(Verdict.In, rig.Replay(edited).Value("clearance", 0)!.Judgement.Verdict);
    }

    // A lambda's or an iterator's class is nested in the type that wrote it.
    private static Type Owner(Type type) =>
        type.DeclaringType is { } outer && type.Name.Contains('<') ? Owner(outer) : type;

    private static HashSet<MethodBase> Reached(MethodBase from)
    {
        HashSet<MethodBase> reached = [];
        Stack<MethodBase> next = new([from]);
        while (next.TryPop(out MethodBase? method))
        {
            if (method.DeclaringType?.Assembly == typeof(RunState).Assembly && reached.Add(method))
            {
                foreach (MethodBase called in Called(method))
                {
                    next.Push(called);
                    PushIteratorBody(called, next);
                }
            }
        }

        return reached;
    }

    // An iterator's body stands in its class's MoveNext.
    private static void PushIteratorBody(MethodBase called, Stack<MethodBase> next)
    {
        bool isCompilers = called.IsConstructor && called.DeclaringType!.Name.Contains('<');
        MethodInfo? body = isCompilers
            ? called.DeclaringType!.GetMethod("MoveNext", BindingFlags.Instance | BindingFlags.NonPublic)
            : null;
        if (body is not null)
        {
            next.Push(body);
        }
    }

    private static IEnumerable<MethodBase> Called(MethodBase method)
    {
        byte[] code = method.GetMethodBody()?.GetILAsByteArray() ?? [];
        Type[]? types = method.DeclaringType!.IsGenericType ? method.DeclaringType.GetGenericArguments() : null;
        Type[]? own = method.IsGenericMethod ? method.GetGenericArguments() : null;
        for (int at = 0; at < code.Length; )
        {
            OpCode op = Codes[code[at] == 0xFE ? unchecked((short)(0xFE00 | code[at + 1])) : code[at]];
            int operand = at + op.Size;
            if (
                op.OperandType == OperandType.InlineMethod
                && method.Module.ResolveMethod(BitConverter.ToInt32(code, operand), types, own) is { } called
            )
            {
                yield return called;
            }

            at = operand + SizeOf(op.OperandType, code, operand);
        }
    }

    private static readonly Dictionary<short, OpCode> Codes = typeof(OpCodes)
        .GetFields(BindingFlags.Public | BindingFlags.Static)
        .Select(field => (OpCode)field.GetValue(null)!)
        .ToDictionary(op => op.Value);

    private static int SizeOf(OperandType type, byte[] code, int at) =>
        type switch
        {
            OperandType.InlineNone => 0,
            OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
            OperandType.InlineVar => 2,
            OperandType.InlineI8 or OperandType.InlineR => 8,
            OperandType.InlineSwitch => 4 + (4 * BitConverter.ToInt32(code, at)),
            _ => 4,
        };
}
