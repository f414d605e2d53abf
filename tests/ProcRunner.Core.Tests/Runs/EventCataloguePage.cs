using System.Text;
using ProcRunner.Core.Tests.Shop;
using ProcRunner.Runs;
using ProcRunner.Shop;
using ProcRunner.Testing;
using ProcRunner.Trail;

namespace ProcRunner.Core.Tests.Runs;

/// <summary>Writes docs/event-catalogue.md from the examples as the program stores them.</summary>
internal static class EventCataloguePage
{
    /// <summary>The whole page.</summary>
    public static string Write()
    {
        StringBuilder page = new(
            """
            # Event catalogue

            One example of every event that the program stores, byte for byte as it stands in an entry of a trail. A test writes
            this page and fails on drift: names and keys are a format. An event, once released, keeps its name, its keys and their
            meaning; what is new gets another name, or a key that old events may lack. Everything in the examples is invented.

            In all of them: `e` is the event's name; `step` is stage and step, `at` a position or `head`; a quantity is a text with
            the number as it was typed and its unit; a time is UTC by ISO 8601; `d`, `covers` and the like are SHA-256, in lower
            hexadecimal digits. A `mark` is a person's signature: ECDSA P-256 with SHA-256, DER, base64. In `judged`, `verdict` is
            in, out, short (of the aim of a cut) or unjudged; low, aim and high are as they were that day, and `detail` says what is
            wrong.

            ## In a job's trail

            """
        );
        Add(page, RunEventExamples.All, static e => RunEventFormat.Write(SmallPlan.Joined, e));
        page.Append("\n## In the shop book\n");
        Add(page, ShopEventExamples.All, ShopEventFormat.Write);
        return page.ToString();
    }

    private static void Add<T>(StringBuilder page, IEnumerable<EventExample<T>> examples, Func<T, Json.Map> write)
    {
        string last = "";
        foreach (EventExample<T> example in examples)
        {
            Json.Map map = write(example.Event);
            string name = map.TextAt("e")!;
            if (name != last)
            {
                page.Append("\n### ").Append(name).Append('\n');
                last = name;
            }

            page.Append('\n').Append(example.Meaning).Append("\n\n```json\n");
            page.Append(Encoding.UTF8.GetString(CanonicalJson.Write(map))).Append("\n```\n");
        }
    }
}
