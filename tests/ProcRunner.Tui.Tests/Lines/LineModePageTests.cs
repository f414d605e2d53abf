using System.Text;
using ProcRunner.Testing;
using ProcRunner.Tui.Lines;

namespace ProcRunner.Tui.Tests.Lines;

public class LineModePageTests
{
    [Fact]
    public void The_page_lists_every_word_of_line_mode()
    {
        StringBuilder page = new(Before);
        page.Append("| line | what it does |\n| --- | --- |\n");
        foreach (LineWord word in LineWords.All)
        {
            page.Append("| `").Append(word.Form.Replace("|", "\\|", StringComparison.Ordinal)).Append("` | ");
            page.Append(word.Does).Append(" |\n");
        }

        Golden.MatchFile(page.Append(After).ToString(), "docs/line-mode.md");
    }

    private const string Before = """
        # Line mode

        `procrunner run STAMP --plain` writes prompts as lines and takes one entry a line: by hand, from a pipe, with a
        screen reader. There are no colours and no cursor movement in it, and nothing that a person or a file wrote can bring
        any in: control and direction characters are written out, as in `\u001b`.

        A prompt says the step and the position, what to do, the limits with their origin, the gauge, the target, and what can
        be entered. Most lines answer it: a reading (`.0552 .0549 .0550 .0551`, `52 thou`, `1+17/32`), a finding or a choice in
        the words of the prompt, `done`, a part as `NUMBER, lot LOT`. A unit at the end of several places holds for all that have
        none: `8.000 8.002 8.010 mm`; where that makes no sense and the reading's own unit does, it is asked about. A line that
        begins with one of these words is that word:


        """;

    private const string After = """

        ## Results out of spec

        A value out of spec is recorded and refused: what was read, the limit and where it comes from, why it matters, and the
        ways on that the procedure gives. One of those, in its own words, is the only answer: `measure again`, `another guide
        because the first one is loose`. A concession and a scrapping need a reason and a lead: `concession because REASON, by
        LEAD pin PIN`; the PIN is asked when it isn't in the line. A mistyped value is put right with `correct`; both stay in
        the trail.

        An entry that can mean two things is questioned and not taken: type what is meant.

        ## From a pipe

        `procrunner run DEMO --plain < procedures/demo/pump-four.entries`

        In the demo shop `--clock-walks` in place of `--plain` has the times walk through invented working days that end now, each entry
        taking about as long as its work. In any other store it is refused: a trail's times are the clock's.

        When nobody is there to answer, the first line that is refused ends the run: a value out of spec that the next line
        doesn't answer with a way on, an entry that was questioned, a word that can't be used now, an `@` that names another
        step than the one the run is at. What stopped it is named with the number of its line: the line of the refused value,
        not of the one after it. Everything up to there is on disk, and the next start goes on at the same step. Empty lines
        and remarks are passed over.

        | exit status | when |
        | --- | --- |
        | 0 | the head is released, or the input ended, or `quit`, while the run waits for its next entry |
        | 1 | the run was stopped by a refusal, or waits for a way on or the answer to a question, or the head was scrapped |
        | 2 | the job couldn't be opened: no such stamp, the store in use by another program, nobody named who is at the machine |

        """;
}
