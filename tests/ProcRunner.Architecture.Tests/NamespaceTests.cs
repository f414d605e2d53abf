using NetArchTest.Rules;

namespace ProcRunner.Architecture.Tests;

/// <summary>What the parts of the core may know of each other, and who inside it may touch an outside library.</summary>
public class NamespaceTests
{
    private static readonly Dictionary<string, string[]> MayKnow = new(StringComparer.Ordinal)
    {
        ["Text"] = [],
        ["Quantities"] = ["Text"],
        ["Trail"] = ["Text"],
        ["Problems"] = [],
        ["Formulas"] = ["Quantities", "ShopMath"],
        ["People"] = ["Text", "Trail"],
        ["Shop"] = ["People", "Quantities", "Trail"],
        ["ShopMath"] = ["Quantities", "Shop"],
        ["Lessons"] = ["Problems", "Quantities", "Shop"],
        ["Procedures"] = ["Formulas", "Problems", "Quantities"],
        ["Runs"] = ["Formulas", "People", "Problems", "Procedures", "Quantities", "Shop", "ShopMath", "Text", "Trail"],
    };

    private static readonly Types Core = Types.InAssembly(Assemblies.Core);

    public static TheoryData<string> Parts => [.. MayKnow.Keys];

    [Fact]
    public void Every_part_of_the_core_is_named_here()
    {
        IEnumerable<string> parts = Assemblies
            .Core.GetTypes()
            .Select(type => type.Namespace)
            .Where(space => space?.StartsWith("ProcRunner", StringComparison.Ordinal) == true)
            .Select(space => space!.Split('.').ElementAtOrDefault(1) ?? "(none)");

        Assert.Equal(MayKnow.Keys.Order(StringComparer.Ordinal), parts.Distinct().Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Parts))]
    public void A_part_of_the_core_knows_only_what_it_may(string part)
    {
        string[] others = [.. MayKnow.Keys.Except(MayKnow[part]).Where(other => other != part).Select(Full)];

        Holds(Core.That().ResideInNamespaceMatching(Inside(part)).Should().NotHaveDependencyOnAny(others));
    }

    [Theory]
    [InlineData("NCalc", "Formulas")]
    [InlineData("Stateless", "Runs")]
    public void A_library_is_touched_by_one_part_of_the_core(string library, string part)
    {
        Holds(Core.That().DoNotResideInNamespaceMatching(Inside(part)).Should().NotHaveDependencyOnAny(library));

        Assert.NotEmpty(
            Core.That().ResideInNamespaceMatching(Inside(part)).And().HaveDependencyOnAny(library).GetTypes()
        );
    }

    // Environment isn't in this list: every iterator of the compiler's asks it for its thread. It is a banned symbol.
    [Fact]
    public void The_core_knows_no_clock_file_console_or_chance() =>
        Holds(
            Core.That()
                .ResideInNamespaceMatching("^ProcRunner")
                .Should()
                .NotHaveDependencyOnAny(
                    "System.IO.File",
                    "System.IO.Directory",
                    "System.IO.FileStream",
                    "System.Console",
                    "System.Random",
                    "System.Net",
                    "System.Diagnostics.Process",
                    "System.Diagnostics.Stopwatch",
                    "System.Threading.Tasks"
                )
        );

    private static string Full(string part) => $"ProcRunner.{part}";

    private static string Inside(string part) => $@"^ProcRunner\.{part}(\.|$)";

    private static void Holds(ConditionList rule)
    {
        TestResult result = rule.GetResult();

        Assert.NotEmpty(result.SelectedTypesForTesting);
        Assert.True(
            result.IsSuccessful,
            string.Join('\n', result.FailingTypes.Select(type => $"{type.FullName}: {type.Explanation}"))
        );
    }
}
