using ProcRunner.Tui.Demo;

namespace ProcRunner.Records.Tests;

/// <summary>What somebody asks of a record years later: why, how, before or after what, where the shop is.</summary>
public class AnswersTests
{
    // procedures/demo/README.md: 3E got its insert because its seat was cut too deep; that of 2E was decided at teardown.
    [Fact]
    public void A_decision_says_why_it_was_made_or_by_which_rule()
    {
        string[][] decided = RowsOf(Worked.Demo.Record, "What was decided, and why");

        Assert.Equal(
            "new insert, decided at seat cut / recession, because: cut too deep",
            decided.Single(r => r[0] == "seat" && r[1] == "3E")[3]
        );
        Assert.StartsWith(
            "no reason noted; the procedure's rule: a nick at the neck",
            decided.Single(r => r[0] == "valve" && r[2] == "replace")[3],
            StringComparison.Ordinal
        );
    }

    // The springs but that of 4I read in assembly what they read as found.
    [Fact]
    public void What_was_taken_again_and_came_out_the_same_is_told_apart_from_what_no_longer_held()
    {
        string[][] same = RowsOf(Worked.Demo.Record, "Taken again, at 1I, and came out the same");
        string[][] before = RowsOf(
            Worked.Demo.Record,
            "What stood before, at 1I, in the order in which it stopped holding"
        );

        Assert.Contains(same, r => r[0] == "spring free length" && r[1] == "1.948 in");
        Assert.DoesNotContain(before, r => r[0] == "spring free length");
        Assert.Contains(before, r => r[0] == "recession");
        Assert.DoesNotContain(
            RowsOf(Worked.Demo.Record, "Taken again, at 4I, and came out the same"),
            r => r[0].StartsWith("spring", StringComparison.Ordinal)
        );
    }

    // ISO 21920-2: Ra and Rz are two parameters of one profile, so that a roughness without its parameter says nothing.
    [Fact]
    public void A_limit_stands_with_what_the_head_spec_says_besides()
    {
        string[] finish = RowsOf(Worked.Demo.Record, "Values of the head").Single(r => r[0] == "deck finish");

        Assert.EndsWith("(maker: Ra, for a composition gasket)", finish[3], StringComparison.Ordinal);
    }

    // The last pressure test of the demo is that after pressing, and the deck was cut after it.
    [Fact]
    public void What_was_inspected_before_the_deck_was_cut_says_so()
    {
        string[] lines = [.. Papers.FrontPage.Of(Worked.Demo.Record).OfType<Papers.Block.Bullets>().Single().Texts];
        string[] parts = lines
            .Single(l =>
                l.StartsWith("Inspected on the head and good, before the deck was cut: ", StringComparison.Ordinal)
            )
            .Split("; after it was cut: ");

        Assert.EndsWith("pressure test after pressing: tight", parts[0], StringComparison.Ordinal);
        Assert.Equal("clean-up: no old surface left; passages: clean and open.", parts[1]);
    }

    // The words of the procedure (procedures/two-valve-iron.yaml), for steps that were done and for no other.
    [Fact]
    public void How_it_was_measured_stands_in_the_procedures_own_words()
    {
        string[][] how = RowsOf(
            Worked.Demo.Record,
            "How the procedure, revision 2, has it measured, inspected and decided"
        );

        Assert.Contains(
            how,
            r =>
                r[0] == "seat cut / seat vacuum"
                && r[1] == "springs off, stems oiled, pad on the port; a worn guide leaks too"
        );
        Assert.Contains(
            how,
            r => r[0] == "surface / deck finish" && r[1].StartsWith("Ra across the lay", StringComparison.Ordinal)
        );
        Assert.DoesNotContain(how, r => r[0] == "teardown / dye crack test");
    }

    // The demo shop sets what stands on its records; a shop that set nothing has no such line.
    [Fact]
    public void The_shops_address_stands_on_the_front_when_it_is_set()
    {
        static bool Has(BuildRecord record) =>
            Papers
                .FrontPage.Of(record)
                .OfType<Papers.Block.Facts>()
                .Single()
                .Items.Contains(("Shop", $"{DemoShop.Name}; {DemoShop.Contact}"));

        Assert.True(Has(Worked.Demo.Record));
        Assert.False(Has(Worked.Demo.Record with { Contact = "" }));
    }

    // The procedure's own lines: revision 2, with its day and what changed.
    [Fact]
    public void The_procedures_revision_stands_with_its_day_and_what_changed()
    {
        string told = Papers
            .ProofPart.Of(Worked.Demo.Record)
            .OfType<Papers.Block.Facts>()
            .Single()
            .Items.Single(i => i.Label == "Procedure")
            .Text;

        Assert.Contains(
            ", revision 2 of 2026-11-25 (a planned skim aims at the clean-up cut; ",
            told,
            StringComparison.Ordinal
        );
    }

    private static string[][] RowsOf(BuildRecord record, string caption) =>
        [
            .. Papers
                .PaperMaker.Of(record)
                .Blocks.OfType<Papers.Block.Table>()
                .Single(t => t.Caption == caption)
                .Rows.Select(r => (string[])[.. r.Cells]),
        ];
}
