using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Shop;
using ProcRunner.Tui.Screens.Maths;
using ProcRunner.Tui.Screens.Parts;
using ProcRunner.Tui.Screens.Shop;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>The shop's maths from within a run, with the numbers of the step in hand.</summary>
internal static class MathsPages
{
    /// <summary>The shop's maths; what is worked out there isn't recorded.</summary>
    public static FamiliesScreen Of(RunWork work) => new(DeskOf(work));

    private static MathsDesk DeskOf(RunWork work) =>
        new(
            new RunWords(work),
            work.State.Job is { Practice: true },
            IsInch(work.Prompt?.Unit ?? work.Job.Shop.Readout?.Unit),
            [
                .. work.Prompt is { } prompt ? AtStep(work, prompt) : [],
                .. OfPosition(work, work.Prompt?.At.Position ?? At.Head),
            ]
        )
        {
            Setting = work.Job.Shop.Readout is { } readout ? SettingOf(readout) : [],
        };

    private static Dictionary<string, string> SettingOf(Readout readout) =>
        new()
        {
            ["grows"] = readout.GrowsDeeper ? "deeper" : "shallower",
            ["shows"] = readout.ShowsDiameter ? "diameter" : "travel",
            ["mode"] =
                readout.Preset ? "preset"
                : readout.StepMode ? "step"
                : "zeroed",
        };

    private static bool IsInch(Unit? unit) => unit == Units.Inch || unit == Units.Thou;

    // What the page of the step shows, by the words that calculations use.
    private static IEnumerable<KnownNumber> AtStep(RunWork work, Prompt prompt)
    {
        const string Where = "this step";
        if (MeasuredAt(work, prompt) is { } measured)
        {
            yield return new("measured", Where, [measured]);
        }

        foreach (
            (string name, Quantity? value) in new[]
            {
                ("aim", prompt.Window.Aim),
                ("low", prompt.Window.Low),
                ("high", prompt.Window.High),
            }
        )
        {
            if (value is { } amount)
            {
                yield return new(name, Where, [amount]);
            }
        }

        if (prompt.Target is not null && work.Job.Shop.Readout is { } readout)
        {
            yield return new("step", "the readout", [new Quantity(readout.Step, readout.Unit)]);
        }

        foreach (NumberShown number in prompt.Numbers)
        {
            if (number.Value is { } amount)
            {
                yield return new(number.Name, Where, [amount]);
            }
        }
    }

    // The last reading of the step, or before the first one what counts of its characteristic.
    private static Quantity? MeasuredAt(RunWork work, Prompt prompt) =>
        prompt.Before.Count > 0 ? prompt.Before[^1].Value
        : prompt.Step.Taking is { } taking
        && work.State.Value(taking.Characteristic, prompt.At.Position) is { Stale: false } record
            ? record.Value
        : null;

    private static IEnumerable<KnownNumber> OfPosition(RunWork work, int position)
    {
        int[] places = position == At.Head ? [At.Head] : [position, At.Head];
        foreach (int place in places)
        {
            for (int i = 0; i < work.Plan.Procedure.Characteristics.Count; i++)
            {
                if (work.State.Value(i, place) is { Stale: false } record)
                {
                    string name = work.Plan.Procedure.Characteristics[i].Name;
                    string where = work.Plan.PositionName(place);
                    yield return new(name, where, [record.Value]);
                    if (record.Places.Count > 1)
                    {
                        yield return new(name, $"{where}, each place", [.. record.Places.Select(one => one.Value)]);
                    }
                }
            }
        }
    }

    private sealed class RunWords(RunWork work) : IFrameWords
    {
        public string Corner => $"{work.State.Job?.Stamp}, {work.Prompt?.Position ?? "head"}";

        public string TakeWord() => "";

        public Screen Help() => new PageScreen(this, "Keys", HelpText.Lines);
    }
}
