using System.Text.Json;
using ProcRunner.Records.Story;
using UglyToad.PdfPig;

namespace ProcRunner.Records.Tests;

/// <summary>What a build record is to hold, thing by thing, looked for in every form.</summary>
public class HoldingsTests
{
    // What the trade asks of a record: common practice, no source.
    public static TheoryData<string, string[]> Things
    {
        get
        {
            BuildRecord record = Worked.Conceded.Record;
            FinalValue depth = record.Find("recession", "3E")!;
            CutTold cut = record.Cuts[^1];
            Case conceded = record.Cases.Last(c => c.End == CaseEnd.Conceded);
            GaugeTold gauge = record.Gauges[0];
            return new TheoryData<string, string[]>
            {
                { "customer", [record.Job.Customer] },
                { "engine and head", [record.Plan.Head.Title, record.Plan.Head.Name] },
                { "stamp", [record.Job.Stamp] },
                { "unit", [record.Plan.Head.LengthUnit.Symbol] },
                { "stage, who measured", [record.Stages[3].Name, record.Stages[3].People[0]] },
                { "who signed", [record.Stages[3].Marks[0].Mark.Mark.Name] },
                { "as found", [Number(Worked.Conceded.Record.Find("recession", "2E")!.Record.AsFound!.Value)] },
                { "final", [Number(depth.Record.Value)] },
                { "low", [Number(depth.Record.Judgement.Low!.Value)] },
                { "aim", [Number(depth.Record.Judgement.Aim!.Value)] },
                { "high", [Number(depth.Record.Judgement.High!.Value)] },
                { "origin", [depth.Record.Judgement.Origin] },
                { "cut", [cut.What, Number(cut.Zero.Set), Number(cut.Passes[^1])] },
                { "what is left", [record.Left[0].What, Number(record.Left[0].Left), record.Left[0].Words] },
                { "part", [record.Parts[0].Part, record.Parts[0].Number, record.Parts[0].Lot] },
                { "gauge", [gauge.Id, gauge.Gauge!.Name] },
                { "pilot and cutter", [record.Tools[0].Text] },
                { "out of spec", [conceded.Lines[0].Text] },
                { "disposition, reason, who", [conceded.Outcome] },
                { "what stood before", [record.Earlier[0].About, record.Earlier[0].Was] },
                { "advice", [record.Advice[0].Text] },
                { "proof code", [record.Proof.Code!.ToString()] },
                { "how to check", [$"procrunner verify --code {record.Proof.Code}"] },
            };
        }
    }

    [Theory]
    [MemberData(nameof(Things))]
    public void Every_form_holds_it(string thing, string[] texts)
    {
        string page = Squeezed(System.Net.WebUtility.HtmlDecode(Worked.Conceded.Text(".html")));
        string table = Squeezed(Worked.Conceded.Text(".csv").Replace("\"\"", "\"", StringComparison.Ordinal));
        string data = Squeezed(Strings(Worked.Conceded.Text(".json")));
        using PdfDocument pdf = PdfDocument.Open(Worked.Conceded.Written(".pdf"));
        string paper = Squeezed(string.Concat(pdf.GetPages().SelectMany(p => p.Letters).Select(l => l.Value)));

        foreach (string text in texts)
        {
            Assert.NotEmpty(text);
            Assert.True(page.Contains(Squeezed(text), StringComparison.Ordinal), $"{thing} in the page: {text}");
            Assert.True(table.Contains(Squeezed(text), StringComparison.Ordinal), $"{thing} in the table: {text}");
            Assert.True(data.Contains(Squeezed(text), StringComparison.Ordinal), $"{thing} in the data: {text}");
            Assert.True(paper.Contains(Squeezed(text), StringComparison.Ordinal), $"{thing} on paper: {text}");
        }
    }

    private static string Number(ProcRunner.Quantities.Quantity quantity) =>
        quantity.Value.ToString(System.Globalization.CultureInfo.InvariantCulture);

    private static string Strings(string json)
    {
        using JsonDocument data = JsonDocument.Parse(json);
        return string.Join('\n', All(data.RootElement));
    }

    private static IEnumerable<string> All(JsonElement element) =>
        element.ValueKind switch
        {
            JsonValueKind.Object => element.EnumerateObject().SelectMany(p => All(p.Value)),
            JsonValueKind.Array => element.EnumerateArray().SelectMany(All),
            JsonValueKind.String => [element.GetString()!],
            _ => [],
        };

    private static string Squeezed(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));
}
