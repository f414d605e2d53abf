using System.Text;
using ProcRunner.Records.Data;

namespace ProcRunner.Records.Tests;

public class CsvTests
{
    // value, low, aim, high and as found hold bare numbers; the rest is text
    private static readonly int[] NumberColumns = [3, 5, 6, 7, 10];

    public static TheoryData<string> Jobs => [.. Worked.All.Select(j => j.Name), "everywhere"];

    // RFC 4180, section 2: lines end with CRLF; every line has as many fields; a field with comma, quote or line break stands
    // in quotes, a quote in it twice.
    [Theory]
    [MemberData(nameof(Jobs))]
    public void Every_line_has_the_fields_of_the_first(string job)
    {
        List<List<string>> lines = Parse(Csv(job));

        Assert.True(lines.Count > 30);
        Assert.All(lines, line => Assert.Equal(lines[0].Count, line.Count));
    }

    // What spreadsheets take for a formula: OWASP, "CSV Injection".
    [Theory]
    [MemberData(nameof(Jobs))]
    public void No_text_begins_a_formula(string job) =>
        Assert.All(
            Parse(Csv(job)).Skip(1),
            line =>
            {
                for (int i = 0; i < line.Count; i++)
                {
                    bool isNumber = NumberColumns.Contains(i);
                    Assert.True(
                        isNumber
                            ? line[i].Length == 0
                                || decimal.TryParse(line[i], System.Globalization.CultureInfo.InvariantCulture, out _)
                            : line[i].TrimStart(' ') is not ['=' or '+' or '-' or '@' or '\t' or '\r', ..],
                        line[i]
                    );
                }
            }
        );

    [Fact]
    public void Every_value_is_read_back()
    {
        List<List<string>> values = [.. Parse(Csv("demo")).Where(l => l[0] == "value")];

        Assert.Equal(Worked.Demo.Record.Values.Count, values.Count);
        Assert.All(
            Worked.Demo.Record.Values.Zip(values),
            pair =>
            {
                Assert.Equal(pair.First.Name, pair.Second[1]);
                Assert.Equal(pair.First.Position, pair.Second[2]);
                Assert.Equal(pair.First.Record.Value.ToString(), $"{pair.Second[3]} {pair.Second[4]}".TrimEnd());
            }
        );
    }

    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("  @SUM(A1)", "'  @SUM(A1)")]
    [InlineData("-2+3", "'-2+3")]
    [InlineData("plain", "plain")]
    [InlineData("a,b", "\"a,b\"")]
    [InlineData("a\"b", "\"a\"\"b\"")]
    [InlineData("=\"a\"", "\"'=\"\"a\"\"\"")]
    [InlineData("", "")]
    public void A_field_is_quoted_and_defused(string text, string field) => Assert.Equal(field, CsvRecord.Field(text));

    private static string Csv(string job)
    {
        if (job != "everywhere")
        {
            return Worked.All.Single(j => j.Name == job).Job.Text(".csv");
        }

        using MemoryStream to = new();
        RecordFile.Write(Hostile.Everywhere(Worked.Demo.Record), "x.csv", to, WritingProgress.None);
        return Encoding.UTF8.GetString(to.ToArray());
    }

    /// <summary>The fields of each line.</summary>
    public static List<List<string>> Parse(string csv)
    {
        List<List<string>> lines =
        [
            [],
        ];
        StringBuilder field = new();
        for (int i = 0; i < csv.Length; i++)
        {
            if (csv[i] == '"')
            {
                for (i++; csv[i] != '"' || (i + 1 < csv.Length && csv[i + 1] == '"'); i++)
                {
                    i += csv[i] == '"' ? 1 : 0;
                    field.Append(csv[i]);
                }
            }
            else if (csv[i] is ',' or '\r')
            {
                lines[^1].Add(field.ToString());
                field.Clear();
                if (csv[i] == '\r')
                {
                    Assert.Equal('\n', csv[++i]);
                    lines.Add([]);
                }
            }
            else
            {
                Assert.NotEqual('\n', csv[i]);
                field.Append(csv[i]);
            }
        }

        Assert.Empty(lines[^1]);
        return lines[..^1];
    }
}
