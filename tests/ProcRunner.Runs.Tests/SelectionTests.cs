using System.Globalization;
using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ProcRunner.Problems;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Yaml;

namespace ProcRunner.Runs.Tests;

/// <summary>
/// Selection tables: each value has one answer or none, never two. The rows are read as those of ISO 286-1:2010, Table 1:
/// over the one bound, up to and including the other.
/// </summary>
public sealed class SelectionTests
{
    private const string Rows = """
        - {over: 0 mm, up-to: 0.2 mm, gives: 2.0 mm}
        - {over: 0.2 mm, up-to: 0.4 mm, gives: 2.2 mm}
        - {over: 0.4 mm, up-to: 0.020 in, gives: 2.4 mm}
        """;

    // The nominal sizes "over 18 up to 30" and their neighbours with the IT7 that ISO 286-1:2010, Table 1, prints for
    // them: 18, 21, 25 micrometres for 10 to 18, 18 to 30, 30 to 50.
    [Theory]
    [InlineData("18 mm", "0.018 mm")]
    [InlineData("18.001 mm", "0.021 mm")]
    [InlineData("30 mm", "0.021 mm")]
    [InlineData("30.0001 mm", "0.025 mm")]
    [InlineData("50 mm", "0.025 mm")]
    [InlineData("1 in", "0.021 mm")]
    public void A_bound_belongs_to_the_row_below_it(string size, string gives)
    {
        Rig rig = Make(
            """
            - {over: 10 mm, up-to: 18 mm, gives: 0.018 mm}
            - {over: 18 mm, up-to: 30 mm, gives: 0.021 mm}
            - {over: 30 mm, up-to: 50 mm, gives: 0.025 mm}
            """
        );

        WorkedValue worked = Assert.Single(rig.Read("depth 1I", size).Worked);

        Assert.True(worked.Value.SameAs(RigShop.Q(gives)), worked.Value.ToString());
        Assert.Contains("up to", worked.Working, StringComparison.Ordinal);
        Assert.Equal(StateDump.Of(rig.State), StateDump.Of(rig.Replay()));
    }

    [Theory]
    [InlineData("10 mm")]
    [InlineData("10.0001 mm", true)]
    [InlineData("18.0001 mm")]
    [InlineData("2 in")]
    public void Beyond_its_ends_there_is_no_answer_and_none_is_made_up(string size, bool answered = false)
    {
        Rig rig = Make("- {over: 10 mm, up-to: 18 mm, gives: 0.018 mm}");

        Decision decision = rig.Try(new RunCommand.Enter(rig.At("depth 1E"), size));

        Assert.Equal(answered, decision is Decision.Accepted);
        if (!answered)
        {
            string why = Assert.IsType<Decision.Refused>(decision).Why;
            Assert.Contains(
                "in no row of its table, which holds over 10 mm up to 18 mm",
                why,
                StringComparison.Ordinal
            );
            Assert.Null(rig.State.Value("chosen", 1));
        }
    }

    [Theory]
    [InlineData("{over: 0.2 mm,", "{over: 0.21 mm,", "over 0.2 mm up to 0.21 mm is in no row")]
    [InlineData("{over: 0.2 mm,", "{over: 0.19 mm,", "over 0.19 mm up to 0.2 mm is in two rows")]
    [InlineData("{over: 0.2 mm,", "{", "only the first row may lack 'over'")]
    [InlineData("up-to: 0.2 mm,", "", "only the last 'up-to'")]
    [InlineData("up-to: 0.020 in", "up-to: 0.015 in", "no value is over 0.4 mm up to 0.015 in")] // 0.381 mm, NIST SP 811 (2008) App. B.8
    public void A_gap_or_an_overlap_is_reported_when_the_file_is_loaded_with_both_figures(
        string old,
        string now,
        string text
    )
    {
        Problem problem = Assert.Single(Load(Rows.Replace(old, now, StringComparison.Ordinal)).Problems);

        Assert.Equal("PR-P10", problem.Code);
        Assert.Contains(text, problem.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void All_faults_are_reported_at_once_each_at_its_row()
    {
        Loaded<Procedure> loaded = Load(
            """
            - {up-to: 1 mm, gives: 1 mm}
            - {over: 1.1 mm, up-to: 2 mm, gives: 2 mm}
            - {over: 1.9 mm, gives: 3 mm}
            """
        );

        Assert.Equal(["PR-P10", "PR-P10"], loaded.Problems.Select(p => p.Code));
        Assert.Equal(1, loaded.Problems[1].Place.Line - loaded.Problems[0].Place.Line);
    }

    [Theory]
    [InlineData("- {over: 1 lbf, gives: 1 mm}", "PR-F02")]
    [InlineData("- {up-to: 1 mm, gives: 1 mm}\n- {over: 1 mm, gives: 1 lbf}", "PR-F02")]
    [InlineData("- {up-to: 1 mm}", "PR-Y07")]
    public void Rows_of_another_kind_are_refused(string rows, string code) =>
        Assert.Equal(code, Assert.Single(Load(rows).Problems).Code);

    /// <summary>
    /// Any table of touching rows has no fault and gives each value within it one row; moved apart or together at any
    /// border, it has one.
    /// </summary>
    [Property(MaxTest = 200)]
    public Property One_answer_each_or_a_fault()
    {
        Gen<(int[] Steps, int At, int Moved, int Value)> gen =
            from steps in Gen.Choose(1, 50).ArrayOf().Where(s => s.Length is >= 2 and <= 12)
            from at in Gen.Choose(1, steps.Length - 1)
            from moved in Gen.Elements(-1, 0, 1)
            from value in Gen.Choose(-20, 700)
            select (steps, at, moved, value);
        return Prop.ForAll(
            gen.ToArbitrary(),
            p =>
            {
                List<SelectionRow> rows = [];
                int from = 0;
                for (int i = 0; i < p.Steps.Length; i++)
                {
                    // Two units a step, so that a border moved by one stays within its row.
                    int to = from + (p.Steps[i] * 2);
                    int begins = from + (i == p.At ? p.Moved : 0);
                    rows.Add(new SelectionRow(Of(begins), Of(to), Of(i)));
                    from = to;
                }

                SelectionTable table = new(rows);
                int holding = rows.Count(r => r.Holds(Exact.Of(Of(p.Value))));
                bool inside = p.Value > 0 && p.Value <= from;
                return table.Faults().Any() == (p.Moved != 0) && (p.Moved != 0 || holding == (inside ? 1 : 0));
            }
        );
    }

    private static Quantity Of(int value) => new(value, Units.Micrometre);

    private static Rig Make(string rows) => new(Procedure(rows), Work.Head(""));

    private static Loaded<Procedure> Load(string rows) =>
        ProcedureFile.Load("procedure.yaml", Encoding.UTF8.GetBytes(Procedure(rows)));

    private static string Procedure(string rows)
    {
        string indented = rows.ReplaceLineEndings("\n").Replace("\n", "\n      ", StringComparison.Ordinal);
        return Work.Procedure(
            "depth: {of: position, measured-in: length, why: it matters}",
            string.Create(
                CultureInfo.InvariantCulture,
                $"- measure: depth\n  window: none\n  works-out:\n    chosen:\n      is: \"[depth]\"\n      window: none\n      selects:\n      {indented}"
            )
        );
    }
}
