using ProcRunner.Records.Story;
using ProcRunner.Runs;
using ProcRunner.Testing;

namespace ProcRunner.Records.Tests;

/// <summary>Text made to run, to break out or to break a layout, put wherever a person types.</summary>
internal static class Hostile
{
    /// <summary>The texts.</summary>
    public static IReadOnlyList<string> Texts { get; } =
    [
        "<script>alert(1)</script>",
        "\"><img src=x onerror=alert(1)>",
        "' onmouseover='alert(1)",
        "</style></title><svg onload=alert(1)>",
        "]]><!-- --><a href=javascript:alert(1)>x</a>",
        "&lt;b&gt; &#x3c;i&#x3e; &amp;",
        "=HYPERLINK(\"http://example.invalid/?\"&A1)",
        "+1+cmd|' /C calc'!A0",
        "-2+3",
        "@SUM(1,2)",
        "\tstarts with a tab",
        "\u202Eruns backwards\u2066 hides\u200B nothing\uFEFF",
        "\u001b[2J\u001b]0;title\u0007 rings",
        "line one\r\nline two\rline three",
        new string('W', 300),
        "\u4e2d\u6587 \u0627\u0644\u0639\u0631\u0628\u064a\u0629 \U0001F600 e\u0301\u0301\u0301\u0301",
        "half a character \uD83D and {{7*7}} ${x} %s",
        "a, \"quoted\" field, with commas",
    ];

    /// <summary>One of the texts, another for each number.</summary>
    public static string At(int number) => Texts[number % Texts.Count];

    /// <summary>The demo's header with hostile text in it.</summary>
    public static JobHeader Header(JobHeader plain) =>
        plain with
        {
            Customer = At(0) + At(1),
            Complaint = At(6),
            EarlierWork = At(11) + At(15),
        };

    /// <summary>The demo's entries with a hostile text for every reason, part, lot and remark, and notes of each.</summary>
    public static IEnumerable<string> Entries()
    {
        int number = 0;
        foreach (string line in File.ReadLines(RepoRoot.PathOf("procedures/demo/pump-four.entries")))
        {
            int because = line.IndexOf(" because ", StringComparison.Ordinal);
            bool isPart = line.Contains(", lot ", StringComparison.Ordinal);
            yield return because >= 0 ? line[..because] + " because " + OneLine(number++)
            : isPart ? $"{OneLine(number++).Replace(',', ';').TrimStart('@')}, lot {OneLine(number++)}"
            : line;
            if (line.StartsWith("@ teardown / recession", StringComparison.Ordinal))
            {
                yield return "note " + OneLine(number++);
                yield return "note " + OneLine(number++);
            }
        }
    }

    /// <summary>A record in which every name and every text is a hostile one.</summary>
    public static BuildRecord Everywhere(BuildRecord record)
    {
        int number = 0;
        string Next() => At(number++);
        Stamped By(Stamped by) => by with { Person = Next(), Id = Next() };
        Said Say(Said said) => said with { About = Next(), Position = said.Position, Text = Next(), By = By(said.By) };
        return record with
        {
            Shop = Next(),
            Job = Header(record.Job) with { Stamp = Next() },
            Opened = By(record.Opened),
            Last = By(record.Last),
            Notes = [.. record.Notes.Concat(record.Findings).Select(Say)],
            Tools = [.. record.Findings.Select(Say)],
            Findings = [.. record.Findings.Select(Say)],
            LeftOut = [.. record.LeftOut.Select(Say)],
            Parts =
            [
                .. record.Parts.Select(p => p with { Part = Next(), Number = Next(), Lot = Next(), By = By(p.By) }),
            ],
            Marks =
            [
                .. record.Marks.Select(m =>
                    m with
                    {
                        Step = Next(),
                        By = By(m.By),
                        Mark = m.Mark with { Reason = Next(), Mark = m.Mark.Mark with { Name = Next() } },
                    }
                ),
            ],
            Gauges =
            [
                .. record.Gauges.Select(g =>
                    g with
                    {
                        Id = Next(),
                        Gauge = g.Gauge! with { Name = Next(), Kind = Next() },
                    }
                ),
            ],
            Values = [.. record.Values.Select(v => v with { Gauge = Next(), By = By(v.By), Before = Next() })],
            Cases =
            [
                .. record.Cases.Select(c =>
                    c with
                    {
                        Outcome = Next(),
                        Fault = Next(),
                        PermittedBy = Next(),
                        End = CaseEnd.Conceded,
                        IsCurrent = true,
                        Lines = [.. c.Lines.Select(l => new CaseLine(Next(), By(l.By)))],
                    }
                ),
            ],
            StandingReason = Next(),
            Decisions = [.. record.Findings.Select(Say)],
            OtherHeads = [.. record.Findings.Select(Say)],
            Cuts =
            [
                .. record.Cuts.Select(c =>
                    c with
                    {
                        What = Next(),
                        Ended = Next(),
                        By = By(c.By),
                        Until = By(c.Until),
                    }
                ),
            ],
            Left = [.. record.Left.Select(l => l with { What = Next(), Words = Next(), Origin = Next() })],
            Stages =
            [
                .. record.Stages.Select(s => s with { Name = Next(), People = [Next(), Next()], First = By(s.First) }),
            ],
            Renewals = [new Renewal(Next(), [Next()], [Next()], [Next()], [Next()], [By(record.Last)])],
            Earlier =
            [
                .. record.Earlier.Select(e =>
                    e with
                    {
                        About = Next(),
                        Was = Next(),
                        Cause = Next(),
                        Then = Next(),
                        WasBy = By(e.WasBy),
                    }
                ),
            ],
            Corrections = [new Correction(Next(), Next(), By(record.Last), Next(), Next(), By(record.Last))],
            Questions = [new Questioned(Next(), Next(), Next(), Next(), By(record.Last))],
            Advice = [.. record.Advice.Select(a => new Advice(Next(), Next()))],
            Clock = [Next(), Next()],
            EarlierStamp = Next(),
            Proof = record.Proof with { RootName = Next(), RootFingerprint = Next() },
        };
    }

    // What a line of input can hold at all.
    private static string OneLine(int number) => At(number).Replace('\r', ' ').Replace('\n', ' ').Trim();
}
