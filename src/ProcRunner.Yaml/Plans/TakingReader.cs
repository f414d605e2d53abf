using System.Globalization;
using ProcRunner.Formulas;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Yaml.Trees;
using ProcRunner.Yaml.Values;

namespace ProcRunner.Yaml.Plans;

/// <summary>Reads what a step takes and what it is judged against.</summary>
internal sealed class TakingReader(
    FormulaReader formulas,
    WorkedOutReader workedOut,
    DefinitionReader definitions,
    ValueReader values,
    ProblemLog log
)
{
    private const decimal MostRatio = 100;

    public Taking Read(StepDraft step)
    {
        Characteristic reading = step.Reading!;
        Keys keys = step.Keys;
        Dimension difference = reading.Dimension.OfDifference();
        Window usual = step.Kind == StepKind.Zero ? new Window.None() : new Window.FromSpec(reading.Name);
        return new Taking
        {
            Characteristic = reading.Name,
            Places = keys.Find("places") is { } places ? definitions.Places(places) : reading.Places,
            Window = ReadWindow(keys.Find("window"), step.OfHead, reading.Dimension, usual),
            Shift = formulas.Read(keys.Find("shift"), step.OfHead, FormulaType.Quantity(difference)),
            Spread = formulas.Read(keys.Find("spread"), step.OfHead, FormulaType.Quantity(difference)),
            WorksOut = [.. step.WorksOut.Select(entry => ReadWorkOut(step, entry))],
            GaugeKind = ReadGauge(keys.Find("gauge"), reading.GaugeKind),
            GaugeRatio = ReadRatio(keys.Find("gauge-ratio")),
            RetestFirst = values.Text(keys.Find("retest-first")),
        };
    }

    /// <summary>Whether anything about it can be out of limits.</summary>
    public static bool IsJudged(Taking taking) =>
        taking.Window is not Window.None
        || taking.Spread is not null
        || taking.WorksOut.Any(work => work.Window is not Window.None);

    private WorkOut ReadWorkOut(StepDraft step, Node.MapEntry entry)
    {
        string name = entry.Key.Text;
        Formula? formula = workedOut.FormulaOf(entry.Value);
        Window usual = new Window.FromSpec(name);
        SelectionTable? table = workedOut.TableOf(entry.Value);
        Dimension dimension =
            table is not null ? table.Rows[0].Gives.Dimension
            : formula?.Type is FormulaType.OfQuantity type ? type.Dimension
            : Dimension.None;
        Window window =
            formula is null || entry.Value is not Node.Map map
                ? usual
                : ReadWindow(map.Find("window"), step.OfHead, dimension, usual);
        return new WorkOut(name, formula ?? FormulaReader.Placeholder, window, table);
    }

    private Window ReadWindow(Node? node, bool ofHead, Dimension dimension, Window usual)
    {
        if (node is null)
        {
            return usual;
        }

        if (node is Node.Scalar)
        {
            string? limit = values.Name(node);
            return limit is null ? usual
                : limit == "none" ? new Window.None()
                : new Window.FromSpec(limit);
        }

        if (Keys.Of(node, "a window", ["low", "aim", "high", "origin"], log) is not { } keys)
        {
            return usual;
        }

        FormulaType wanted = FormulaType.Quantity(dimension);
        Formula? low = formulas.Read(keys.Find("low"), ofHead, wanted);
        Formula? aim = formulas.Read(keys.Find("aim"), ofHead, wanted);
        Formula? high = formulas.Read(keys.Find("high"), ofHead, wanted);
        if (keys.Find("low") is null && keys.Find("high") is null)
        {
            log.Add(
                "PR-H08",
                keys.Place,
                "this window says nothing; give it low, high or both, or write 'window: none'"
            );
        }

        if (keys.Find("origin") is null)
        {
            string words = Quoting.AnyOf([.. OriginWords.Table.Keys]);
            log.Add("PR-H01", keys.Place, $"this window doesn't say where it comes from; add 'origin: {words}'");
        }

        Origin origin = values.OneOf(keys.Find("origin"), OriginWords.Table) ?? Origin.Shop;
        return new Window.Worked(low, aim, high, origin);
    }

    private string? ReadGauge(Node? node, string? usual) =>
        node is null ? usual
        : node is Node.Scalar { Text: "none" } ? null
        : values.Name(node);

    private decimal ReadRatio(Node? node)
    {
        const decimal Usual = 4;
        if (values.Quantity(node, null) is not { } read)
        {
            return Usual;
        }

        if (ReferenceEquals(read.Unit, Units.One) && read.Value is >= 1 and <= MostRatio)
        {
            return read.Value;
        }

        log.Add(
            "PR-Y10",
            node!.Place,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{read} was read; a gauge ratio is a number from 1 to {MostRatio}, as 4 for 4:1"
            )
        );
        return Usual;
    }
}
