using System.Globalization;
using System.Text;

namespace ProcRunner.Endurance;

/// <summary>Text as somebody would send it who means harm, or who leaned on the keyboard.</summary>
internal sealed class HostileText(Random random)
{
    private static readonly string[] Pieces =
    [
        "\u001b[2J\u001b[31mgone",
        "\u001b]0;title\u0007",
        "\u001b]8;;http://x.invalid\u001b\\link",
        "\u009b31m",
        "\u0000",
        "\u007f\b\b\b",
        "\r\nforged line",
        "\u202egnp.exe",
        "\u2066\u2069\u200b\u200d\ufeff",
        "\ud800",
        "\udc00\ud800",
        "\U0001F602\u0301\u0301\u0301",
        "\uffff\ufffe",
        "../../../../etc/passwd",
        "C:\\windows\\system32\\con",
        "/dev/null",
        "~/.ssh",
        "file\u2028name",
        "=cmd|' /C calc'!A0",
        "=HYPERLINK(\"http://x.invalid\")",
        "+1+1",
        "@SUM(1)",
        "-2+3",
        "{{7*7}}",
        "%s%n%x",
        "$(rm -rf .)",
        "'; drop table jobs; --",
        "<script>alert(1)</script>",
        "\"\\\"",
        "}],\"ev\":[{\"e\":\"job released\"",
        "\t" + "0000000000000000000000000000000000000000000000000000000000000000",
        "79228162514264337593543950335",
        "0.0000000000000000000000000001 in",
        "1e308",
        "1/0",
        "NaN",
        "-",
        "9 9 9 9 9 9 9 9 9",
        "0.0520 in; 0.0521 in",
        "1+17/32",
        "mm mm mm",
        "\u0661\u0662\u0663",
    ];

    private static readonly string[] Sensible =
    [
        "done",
        "sound",
        "0.055 in",
        "0.0549 0.0551 0.0550 0.0552",
        "1.560",
        "23 inHg",
        "keep",
        "new insert",
        "G-8, lot 12",
        "measure again",
        "",
    ];

    /// <summary>A text; one in many thousands is a megabyte.</summary>
    public string Next()
    {
        if (random.Next(20_000) == 0)
        {
            return string.Concat(Enumerable.Repeat(Pieces[random.Next(Pieces.Length)], 1 << 17));
        }

        StringBuilder text = new();
        for (int parts = random.Next(4); parts >= 0; parts--)
        {
            text.Append(
                random.Next(5) switch
                {
                    0 => Sensible[random.Next(Sensible.Length)],
                    1 => Number(),
                    2 => ((char)random.Next(char.MaxValue + 1)).ToString(),
                    _ => Pieces[random.Next(Pieces.Length)],
                }
            );
            text.Append(random.Next(3) == 0 ? " " : "");
        }

        return text.ToString();
    }

    /// <summary>One of the texts given, or a hostile one.</summary>
    public string NextOr(IReadOnlyList<string> known) =>
        known.Count > 0 && random.Next(3) > 0 ? known[random.Next(known.Count)] : Next();

    private string Number() =>
        (random.NextDouble() * Math.Pow(10, random.Next(-6, 9))).ToString("0.######", CultureInfo.InvariantCulture);
}
