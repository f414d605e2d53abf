namespace ProcRunner.Architecture.Tests;

/// <summary>One assembly for each outside dependency, all pointing at the core; arrows run downward only.</summary>
public class AssemblyTests
{
    public static TheoryData<string> Projects => [.. SourceProject.All.Select(p => p.Name)];

    [Fact]
    public void Every_project_of_the_source_is_looked_at() =>
        Assert.Superset(
            new HashSet<string>([
                "ProcRunner.Core",
                "ProcRunner.Yaml",
                "ProcRunner.Store.Local",
                "ProcRunner.Practice",
                "ProcRunner.Records",
                "ProcRunner.Tui",
            ]),
            SourceProject.All.Select(p => p.Name).ToHashSet()
        );

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_project_refers_only_to_projects_further_down(string name)
    {
        SourceProject project = SourceProject.All.Single(p => p.Name == name);

        Assert.All(
            project.Projects,
            to => Assert.True(SourceProject.All.Single(p => p.Name == to).Height < project.Height, $"{name} -> {to}")
        );
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void An_assembly_uses_only_assemblies_further_down(string name)
    {
        int height = SourceProject.All.Single(p => p.Name == name).Height;
        HashSet<string> allowed = SourceProject.All.Where(p => p.Height < height).Select(p => p.Name).ToHashSet();

        IEnumerable<string> ours = Assemblies
            .UsedBy(Assemblies.Load(name))
            .Where(used => used.StartsWith("ProcRunner", StringComparison.OrdinalIgnoreCase));

        Assert.Empty(ours.Except(allowed));
    }

    [Fact]
    public void The_core_refers_to_nothing_but_its_parser_and_its_state_machines()
    {
        SourceProject core = SourceProject.All.Single(p => p.Name == "ProcRunner.Core");

        Assert.Empty(core.Projects);
        Assert.Equal(["NCalc.Core", "Stateless"], core.Packages.Order(StringComparer.Ordinal));
        Assert.All(
            Assemblies.UsedBy(Assemblies.Core).Where(used => !Assemblies.IsOfTheFramework(used)),
            used => Assert.True(Is("NCalc", used) || Is("Stateless", used), used)
        );
    }

    [Fact]
    public void A_package_is_the_business_of_one_project() =>
        Assert.All(
            SourceProject.All.SelectMany(p => p.Packages, (p, package) => (p.Name, package)).GroupBy(p => p.package),
            users => Assert.Single(users)
        );

    [Theory]
    [InlineData("YamlDotNet", "ProcRunner.Yaml")]
    [InlineData("LiteDB", "ProcRunner.Store.Local")]
    [InlineData("NCalc", "ProcRunner.Core")]
    [InlineData("Stateless", "ProcRunner.Core")]
    [InlineData("PdfSharp", "ProcRunner.Records")]
    [InlineData("QRCoder", "ProcRunner.Records")]
    [InlineData("Terminal.Gui", "procrunner")]
    [InlineData("System.CommandLine", "procrunner")]
    public void A_library_is_used_by_one_assembly(string library, string owner)
    {
        IEnumerable<string> users = Assemblies
            .All.Where(a => Assemblies.UsedBy(a).Any(used => Is(library, used)))
            .Select(a => a.GetName().Name!);

        Assert.Empty(users.Except([owner]));
    }

    [Fact]
    public void Only_the_program_writes_to_the_console() =>
        Assert.All(
            Assemblies.All.Where(a => a != Assemblies.Load("ProcRunner.Tui")),
            a => Assert.DoesNotContain("System.Console", Assemblies.UsedBy(a))
        );

    private static bool Is(string library, string assembly) =>
        assembly == library || assembly.StartsWith(library + ".", StringComparison.Ordinal);
}
