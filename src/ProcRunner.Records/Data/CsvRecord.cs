using System.Globalization;
using System.Text;
using ProcRunner.Quantities;
using ProcRunner.Records.History;
using ProcRunner.Records.Papers;
using ProcRunner.Records.Story;
using ProcRunner.Runs;
using ProcRunner.Text;

namespace ProcRunner.Records.Data;

/// <summary>
/// Writes a record as one table of comma-separated values (RFC 4180): a line for each thing it holds, told apart by the
/// first column. A text that a spreadsheet would take for a formula gets an apostrophe before it; numbers stay numbers.
/// </summary>
internal sealed class CsvRecord
{
    private static readonly string[] Columns =
    [
        "kind",
        "about",
        "at",
        "value",
        "unit",
        "low",
        "aim",
        "high",
        "limit from",
        "standing",
        "as found",
        "gauge",
        "text",
        "person",
        "time",
        "entry",
    ];

    private readonly StringBuilder _built = new();

    private CsvRecord() { }

    /// <summary>Writes it as UTF-8.</summary>
    /// <exception cref="OperationCanceledException">The writing is to stop.</exception>
    public static void Write(BuildRecord record, Stream to, WritingProgress progress)
    {
        CsvRecord csv = new();
        csv.Line([.. Columns.Select(Quoted)]);
        csv.Job(record);
        csv.Values(record);
        progress.Report(1, 2);
        csv.Story(record);
        csv.Work(record);
        csv.Words(record);
        progress.Report(2, 2);
        to.Write(Encoding.UTF8.GetBytes(csv._built.ToString()));
    }

    /// <summary>A text as a field: nothing unseen, nothing that begins a formula, quotes where RFC 4180 asks for them.</summary>
    public static string Field(string text)
    {
        string shown = SafeText.Show(text);
        bool begins = shown.TrimStart(' ') is ['=' or '+' or '-' or '@' or '\t' or '\r', ..];
        return Quoted(begins ? "'" + shown : shown);
    }

    private static string Quoted(string text) =>
        text.AsSpan().ContainsAny(",\"\r\n") ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;

    private void Job(BuildRecord record)
    {
        (string About, string Text)[] facts =
        [
            ("stamp", record.Job.Stamp),
            ("job", record.JobId),
            ("shop", record.Shop),
            ("shop's address and telephone", record.Contact),
            ("head", record.Plan.Head.Title),
            (
                "head spec",
                $"{record.Plan.Head.Name} revision {N(record.Plan.Head.Revision)} SHA-256 {record.Job.HeadDigest}"
            ),
            (
                "procedure",
                $"{record.Plan.Procedure.Name} revision {N(record.Plan.Procedure.Revision)} SHA-256 {record.Job.ProcedureDigest}"
            ),
            ("customer", record.Job.Customer),
            ("complaint", record.Job.Complaint),
            ("earlier work", record.Job.EarlierWork),
            ("practice", record.Job.Practice ? "PRACTICE: worth nothing to a customer" : "no"),
            ("demo", record.IsDemo ? "DEMO: invented, its sign-offs prove nothing" : "no"),
            ("state", record.StandingWord),
            ("unit of length", record.Plan.Head.LengthUnit.Symbol),
            ("check by the code", record.Proof.Code is { } code ? $"procrunner verify --code {code}" : ""),
            ("proof code", record.Proof.Code?.ToString() ?? "none: not closed out"),
            ("last entry's SHA-256", record.Proof.LastDigest.ToString()),
        ];
        foreach ((string about, string text) in facts)
        {
            Add("job", about, text: text, by: record.Last);
        }
    }

    private void Values(BuildRecord record)
    {
        foreach (FinalValue value in record.Values)
        {
            Judgement judged = value.Record.Judgement;
            AddValue("value", value, judged, Telling.Places(value.Record.Places).Trim(' ', '(', ')'));
        }

        foreach (Reckoning left in record.Left)
        {
            Add(
                "left",
                left.What,
                left.Position,
                Number(left.Left),
                left.Left.Unit.Symbol,
                limitFrom: left.Origin,
                text: $"{left.Words}: {left.Working}"
            );
        }
    }

    private void AddValue(string kind, FinalValue value, Judgement judged, string places) =>
        Line([
            kind,
            Field(value.Name),
            Field(value.Position),
            Number(value.Record.Value),
            Field(value.Record.Value.Unit.Symbol),
            Number(judged.Low),
            Number(judged.Aim),
            Number(judged.High),
            Field(judged.Origin),
            Field(value.Verdict),
            Number(value.Record.AsFound),
            Field(value.Gauge),
            Field(places.Length > 0 ? $"{value.Step}: {places}" : value.Step),
            Field(value.By.Person),
            value.By.Exact,
            N(value.By.Entry),
        ]);

    private void Story(BuildRecord record)
    {
        foreach (Case told in record.Cases)
        {
            foreach (CaseLine line in told.Lines)
            {
                Add("out of spec", $"{told.Stage} / {told.Step}", told.Position, text: line.Text, by: line.By);
            }

            Add(
                "out of spec",
                $"{told.Stage} / {told.Step}",
                told.Position,
                standing: told.End.ToString(),
                text: told.Outcome
            );
        }

        Since(record);
        foreach (Correction c in record.Corrections)
        {
            Add("correction", c.Step, text: $"was: {c.Was}; now: {c.Now}; because: {c.Reason}", by: c.By);
        }

        foreach (Earlier e in record.Earlier)
        {
            Add(
                "earlier",
                e.About,
                e.Position,
                text: e.IsSame
                    ? $"was: {e.Was} (entry {N(e.WasBy.Entry)}); taken again: {e.Cause} (entry {N(e.Until.Entry)}); came out the same"
                    : $"was: {e.Was} (entry {N(e.WasBy.Entry)}); no longer held because: {e.Cause} (entry {N(e.Until.Entry)}); then: {e.Then}",
                by: e.ThenBy
            );
        }

        foreach (Renewal r in record.Renewals)
        {
            Add("moved", r.Cause, text: string.Join(", ", r.Items), by: r.By[0]);
        }

        foreach (Questioned q in record.Questions)
        {
            Add("questioned", q.Step, text: $"typed: {q.Typed}; why: {q.Why}; taken after that: {q.Then}", by: q.By);
        }

        foreach (LimitTold c in record.ChosenLimits)
        {
            string limits = Telling.Window(c.Limit.Low, c.Limit.Aim, c.Limit.High);
            Add(
                "limit chosen",
                c.Limit.Characteristic,
                c.Position,
                text: $"{limits}; because: {c.Limit.Reason}",
                by: c.By
            );
        }
    }

    private void Since(BuildRecord record)
    {
        foreach (Comeback.Row r in record.Comeback?.Rows.Where(r => r.Found is not null) ?? [])
        {
            Add(
                "since earlier job",
                r.Name,
                r.Position,
                Number(r.Found),
                r.Found!.Value.Unit.Symbol,
                r.Limits.Origin,
                r.IsPast ? "past its limit then" : "",
                $"found; went out of job {record.EarlierStamp} with {r.Built}; change {r.Change?.ToString() ?? "none"}; used of what was left: {(r.Used is null ? "none" : ComebackPart.Percent(r))}"
            );
        }
    }

    private void Work(BuildRecord record)
    {
        foreach (StageTold s in record.Stages)
        {
            string signed =
                s.Marks.Count > 0
                    ? string.Join("; ", s.Marks.Select(m => $"{m.Mark.Meaning} by {m.Mark.Mark.Name}"))
                    : "not signed";
            Add(
                "stage",
                s.Name,
                standing: signed,
                text: $"measured and entered by {string.Join(", ", s.People)}",
                by: s.Last
            );
        }

        foreach (PartTold p in record.Parts)
        {
            Add(
                "part",
                p.Part,
                p.Position,
                standing: p.IsInPlace ? "in place" : "replaced again later",
                text: $"number {p.Number}, lot {p.Lot}",
                by: p.By
            );
        }

        foreach (CutTold c in record.Cuts)
        {
            string passes = string.Join("; ", c.Passes);
            Add(
                "cut",
                c.What,
                c.Position,
                standing: c.Ended,
                text: $"zero {c.Zero.Set} at {c.Zero.Measured}; readout {passes}",
                by: c.By
            );
        }

        foreach (GaugeTold g in record.Gauges)
        {
            Add(
                "gauge",
                g.Id,
                text: g.Gauge is { } gauge
                    ? $"{gauge.Name}, {gauge.Kind}, steps of {gauge.Resolution}, U {gauge.Uncertainty}, calibrated until {WorkPart.Until(gauge)}, {N(g.Readings)} readings"
                    : "not in the shop book"
            );
        }
    }

    private void Words(BuildRecord record)
    {
        foreach ((string kind, IReadOnlyList<Said> said) in Sayings(record))
        {
            foreach (Said s in said)
            {
                Add(kind, s.About, s.Position, text: s.Why.Length > 0 ? $"{s.Text}; why: {s.Why}" : s.Text, by: s.By);
            }
        }

        foreach (MarkTold m in record.Marks)
        {
            string beside = m.Mark.Beside is { } lead ? $", {lead.Name} beside" : "";
            Add(
                "mark",
                m.Step,
                standing: m.Mark.Meaning,
                text: $"{m.Mark.Mark.Name}{beside}{(m.Mark.Reason.Length > 0 ? ": " : "")}{m.Mark.Reason}",
                by: m.By
            );
        }

        foreach (string set in record.Clock)
        {
            Add("clock", "clock set back", text: set);
        }

        foreach (Advice a in record.Advice)
        {
            Add("advice", a.From, text: a.Text);
        }
    }

    private static (string Kind, IReadOnlyList<Said> Said)[] Sayings(BuildRecord record) =>
        [
            ("finding", record.Findings),
            ("decision", record.Decisions),
            ("other head", record.OtherHeads),
            ("left out", record.LeftOut),
            ("tool", record.Tools),
            ("note", record.Notes),
        ];

    private void Add(
        string kind,
        string about,
        string at = "",
        string value = "",
        string unit = "",
        string limitFrom = "",
        string standing = "",
        string text = "",
        Stamped? by = null
    ) =>
        Line([
            kind,
            Field(about),
            Field(at),
            value,
            Field(unit),
            "",
            "",
            "",
            Field(limitFrom),
            Field(standing),
            "",
            "",
            Field(text),
            Field(by?.Person ?? ""),
            by?.Exact ?? "",
            by is null ? "" : N(by.Entry),
        ]);

    private void Line(string[] fields) => _built.AppendJoin(',', fields).Append("\r\n");

    private static string Number(Quantity? quantity) =>
        quantity is { } some ? some.Value.ToString(CultureInfo.InvariantCulture) : "";

    private static string N(long number) => number.ToString(CultureInfo.InvariantCulture);
}
