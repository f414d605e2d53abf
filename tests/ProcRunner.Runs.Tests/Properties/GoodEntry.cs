using System.Globalization;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Runs.Prompts;

namespace ProcRunner.Runs.Tests.Properties;

/// <summary>What a careful operator would do next at a step of <see cref="SmallWork"/>.</summary>
internal static class GoodEntry
{
    /// <summary>A command that goes on with the step; readings come in limits.</summary>
    public static RunCommand For(Rig rig, At at)
    {
        Prompt prompt = Prompter.At(rig.State, rig.Shop, at);
        return prompt.Awaits switch
        {
            Awaited.Signature => rig.SignOf(at, RigShop.Lead),
            Awaited.WayOn => Way(rig, at, BestWay(rig, at, prompt.WaysOn)),
            _ => new RunCommand.Enter(at, Text(rig, prompt)),
        };
    }

    // Once more where that can help, then a lead's word, then whatever else there is.
    private static WayOn BestWay(Rig rig, At at, IReadOnlyList<WayOn> ways)
    {
        bool again = rig.State.Find(at)!.Fails < 2 && rig.Plan.Steps[at.Step].Work is not StepWork.Cut;
        return ways.FirstOrDefault(w => again && w.Kind == WayKind.Again)
            ?? ways.FirstOrDefault(w => w.Kind == WayKind.Concession)
            ?? ways.FirstOrDefault(w => w.Kind != WayKind.Scrap)
            ?? ways[0];
    }

    /// <summary>A way on, with a lead's mark where it needs one.</summary>
    public static RunCommand Way(Rig rig, At at, WayOn way)
    {
        const string Reason = "looked at together";
        bool byLead = way.Kind is WayKind.Concession or WayKind.Scrap;
        Mark? mark = byLead
            ? rig.MarkOf(RigShop.Lead, m => SignedBytes.OfWay(rig.State, at, way.Kind, Reason, m))
            : null;
        return new RunCommand.TakeWay(at, way.Text, Reason, mark);
    }

    public static string Text(Rig rig, Prompt prompt) =>
        prompt.Awaits switch
        {
            Awaited.Reading => Reading(rig, prompt),
            Awaited.NumberSet => prompt.NumberToSet.ToString()!,
            Awaited.Readout => prompt.Target!.Show.ToString(),
            Awaited.Finding => prompt.Choices[0],
            Awaited.Choice => prompt.Choices[prompt.At.Position == 1 ? 1 : 0],
            Awaited.Part => "G-7, lot 12",
            _ => "done",
        };

    /// <summary>One value for every place.</summary>
    public static string Places(Prompt prompt, Quantity value) =>
        string.Join("; ", Enumerable.Repeat(value.ToString(), Math.Max(1, prompt.Places.Count)));

    private static string Reading(Rig rig, Prompt prompt)
    {
        if (prompt.Step.Work is StepWork.Cut && prompt.Progress is { } progress && prompt.Recheck.Length == 0)
        {
            decimal predicted = progress.Reading.Value + progress.Travel.Value - progress.TravelAtReading.Value;
            return Places(prompt, new Quantity(predicted, Units.Inch));
        }

        if (prompt.Window.Aim is { } aim && prompt.Step.Work is not StepWork.Zero)
        {
            return Places(prompt, aim);
        }

        string stem = rig.State.Value("stem", prompt.At.Position) is { } known
            ? (known.Value.Value + 0.0025m).ToString(CultureInfo.InvariantCulture)
            : "0.343";
        string text = prompt.Step.Taking!.Characteristic switch
        {
            "thickness" => "3.925 in",
            "recession" => "0.030 in",
            "stem" => "0.3405 in",
            "guide bore" => $"{stem} in",
            "runout" => "0.001 in",
            "planned skim" => "0.004 in",
            _ => "1.560 in",
        };
        return Places(prompt, RigShop.Q(text));
    }
}
