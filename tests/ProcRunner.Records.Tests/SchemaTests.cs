using System.Text.Json;
using System.Text.RegularExpressions;
using ProcRunner.Testing;

namespace ProcRunner.Records.Tests;

// JSON Schema, draft 2020-12 (json-schema.org/draft/2020-12): the keywords that docs/build-record.schema.json uses and no
// others; a keyword that isn't known here fails, so that nothing goes unchecked.
public class SchemaTests
{
    private static readonly JsonElement Schema = JsonDocument
        .Parse(File.ReadAllText(RepoRoot.PathOf("docs/build-record.schema.json")))
        .RootElement;

    public static TheoryData<string> Jobs => [.. Worked.All.Select(j => j.Name)];

    [Theory]
    [MemberData(nameof(Jobs))]
    public void A_record_is_what_its_schema_says(string job)
    {
        using JsonDocument record = JsonDocument.Parse(Worked.All.Single(j => j.Name == job).Job.Written(".json"));

        Assert.Empty(Faults(Schema, record.RootElement, "record"));
    }

    [Theory]
    [InlineData("\"state\":\"released\"", "\"state\":\"perfect\"")]
    [InlineData("\"practice\":false", "\"practice\":\"no\"")]
    [InlineData("\"customer\":", "\"client\":")]
    [InlineData("\"v\":\"3.9260\"", "\"v\":\"about 4\"")]
    [InlineData("\"last-entry\":561", "\"last-entry\":0")]
    public void What_isnt_so_is_found(string right, string wrong)
    {
        string text = Worked.Demo.Text(".json");
        Assert.Contains(right, text, StringComparison.Ordinal);
        using JsonDocument record = JsonDocument.Parse(text.Replace(right, wrong, StringComparison.Ordinal));

        Assert.NotEmpty(Faults(Schema, record.RootElement, "record"));
    }

    private static IEnumerable<string> Faults(JsonElement schema, JsonElement value, string at) =>
        schema.EnumerateObject().SelectMany(keyword => Faults(schema, keyword, value, at));

    private static IEnumerable<string> Faults(JsonElement schema, JsonProperty keyword, JsonElement value, string at) =>
        keyword.Name switch
        {
            "$schema" or "title" or "description" or "$defs" => [],
            "$ref" => Faults(Referred(keyword.Value.GetString()!), value, at),
            "type" => Types(keyword.Value).Any(t => Is(t, value)) ? [] : [$"{at}: is no {keyword.Value}"],
            "const" => JsonElement.DeepEquals(keyword.Value, value) ? [] : [$"{at}: isn't {keyword.Value}"],
            "enum" => keyword.Value.EnumerateArray().Any(v => JsonElement.DeepEquals(v, value))
                ? []
                : [$"{at}: {value}"],
            "pattern" => value.ValueKind != JsonValueKind.String
            || Matches(keyword.Value.GetString()!, value.GetString()!)
                ? []
                : [$"{at}: {value}"],
            "minimum" => value.ValueKind != JsonValueKind.Number || value.GetInt64() >= keyword.Value.GetInt64()
                ? []
                : [$"{at}: {value}"],
            "required" => keyword
                .Value.EnumerateArray()
                .Where(name => !value.TryGetProperty(name.GetString()!, out _))
                .Select(name => $"{at}: no {name}"),
            "additionalProperties" => value
                .EnumerateObject()
                .Where(p => !schema.GetProperty("properties").TryGetProperty(p.Name, out _))
                .Select(p => $"{at}: {p.Name}"),
            "properties" => keyword
                .Value.EnumerateObject()
                .Where(p => value.TryGetProperty(p.Name, out _))
                .SelectMany(p => Faults(p.Value, value.GetProperty(p.Name), $"{at}.{p.Name}")),
            "items" => value.EnumerateArray().SelectMany((item, i) => Faults(keyword.Value, item, $"{at}[{i}]")),
            "oneOf" => keyword.Value.EnumerateArray().Count(s => !Faults(s, value, at).Any()) == 1
                ? []
                : [$"{at}: none or several fit"],
            _ => [$"{at}: keyword {keyword.Name} isn't known to this check"],
        };

    private static JsonElement Referred(string reference) =>
        Schema.GetProperty("$defs").GetProperty(reference.Split('/')[^1]);

    private static IEnumerable<string> Types(JsonElement type) =>
        type.ValueKind == JsonValueKind.String
            ? [type.GetString()!]
            : type.EnumerateArray().Select(t => t.GetString()!);

    private static bool Is(string type, JsonElement value) =>
        type switch
        {
            "object" => value.ValueKind == JsonValueKind.Object,
            "array" => value.ValueKind == JsonValueKind.Array,
            "string" => value.ValueKind == JsonValueKind.String,
            "boolean" => value.ValueKind is JsonValueKind.True or JsonValueKind.False,
            "null" => value.ValueKind == JsonValueKind.Null,
            "integer" => value.ValueKind == JsonValueKind.Number && value.TryGetInt64(out _),
            _ => false,
        };

    private static bool Matches(string pattern, string text) =>
        Regex.IsMatch(text, pattern, RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking);
}
