using System.Collections;
using System.Globalization;
using System.Reflection;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath;

/// <summary>
/// Every typed calculation with what is no number, or no size of the shop, among its arguments: a fault that names one of them, or
/// a finite result; never a NaN, never an exception.
/// </summary>
public sealed class OddDoublesTests
{
    private static readonly double[] Odd =
    [
        double.NaN,
        double.PositiveInfinity,
        double.NegativeInfinity,
        double.MaxValue,
        double.MinValue,
        double.Epsilon,
        0,
        -1,
    ];

    // Arguments that most calculations take; what they say of a fault among them is right as well.
    private static readonly double[] Usual = [50, 40, 30, 20, 45, 10];

    public static TheoryData<string> Calculations =>
        [.. All.Select(Name).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    private static IEnumerable<MethodInfo> All =>
        typeof(Fit)
            .Assembly.GetExportedTypes()
            .Where(type => type.Namespace == "ProcRunner.ShopMath")
            .SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly))
            .Where(method =>
                method.ReturnType.IsGenericType
                && method.ReturnType.GetGenericTypeDefinition() == typeof(ShopResult<>)
                && method.GetParameters().Length > 0
                && method.GetParameters().All(one => Takes(one.ParameterType))
            );

    [Fact]
    public void Most_calculations_on_doubles_are_looked_at() => Assert.InRange(All.Count(), 25, 200);

    [Theory]
    [MemberData(nameof(Calculations))]
    public void What_is_no_number_does_not_come_out(string name)
    {
        foreach (MethodInfo method in All.Where(one => Name(one) == name))
        {
            ParameterInfo[] parameters = method.GetParameters();
            for (int i = 0; i < parameters.Length; i++)
            {
                foreach (double odd in Odd)
                {
                    object[] arguments =
                    [
                        .. parameters.Select(
                            (one, j) => Argument(one.ParameterType, j == i ? odd : Usual[j % Usual.Length])
                        ),
                    ];
                    string call = string.Create(
                        CultureInfo.InvariantCulture,
                        $"{name} with {parameters[i].Name} {odd}"
                    );
                    Check(method.Invoke(null, arguments)!, call);
                }
            }
        }
    }

    private static void Check(object result, string call)
    {
        object?[] arguments = [null, null];
        bool known = (bool)result.GetType().GetMethod("TryGet")!.Invoke(result, arguments)!;
        if (known)
        {
            Assert.True(IsFinite(arguments[0]!, 3), $"{call} gives {arguments[0]}");
        }
        else
        {
            ShopFault fault = Assert.IsType<ShopFault>(arguments[1]);
            Assert.NotEmpty(fault.Argument);
            Assert.NotEmpty(fault.Allowed);
        }
    }

    // A number, or all numbers of a record.
    private static bool IsFinite(object value, int deep) =>
        value switch
        {
            double number => double.IsFinite(number),
            string => true,
            IEnumerable many => many.Cast<object>().All(one => IsFinite(one, deep - 1)),
            _ when deep == 0 || value.GetType().IsEnum || value.GetType().IsPrimitive => true,
            _ => value
                .GetType()
                .GetProperties()
                .Where(one => one.GetIndexParameters().Length == 0)
                .Select(one => one.GetValue(value))
                .All(one => one is null || IsFinite(one, deep - 1)),
        };

    private static bool Takes(Type type) =>
        type == typeof(double)
        || type == typeof(int)
        || type == typeof(bool)
        || type == typeof(Elasticity)
        || type == typeof(IReadOnlyList<double>);

    private static object Argument(Type type, double value) =>
        type == typeof(double) ? value
        : type == typeof(int) ? (double.IsNaN(value) ? 0 : (int)Math.Clamp(value, int.MinValue, int.MaxValue))
        : type == typeof(bool) ? value > 0
        : type == typeof(Elasticity) ? new Elasticity(value * 1000, 0.3)
        : new[] { 1, value, 2, 3 };

    private static string Name(MethodInfo method) => $"{method.DeclaringType!.Name}.{method.Name}";
}
