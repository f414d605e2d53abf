using System.Globalization;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>The one number that matters now, drawn large.</summary>
/// <param name="Label">What it is.</param>
/// <param name="Digits">Its figures.</param>
/// <param name="Unit">Its unit.</param>
internal sealed record Figure(string Label, string Digits, string Unit)
{
    /// <summary>
    /// The number of a step: what to cut to, what to set; for a reading its aim, else the end of its window, else its last
    /// value. Null for a step without one.
    /// </summary>
    public static Figure? Of(RunState state, Prompt prompt) =>
        prompt.Awaits switch
        {
            Awaited.Readout when prompt.Target is { } target => Of(target.StopsShort ? "stop" : "aim", target.Show),
            Awaited.NumberSet when prompt.NumberToSet is { } number => Of("zero point", number),
            Awaited.Reading => OfReading(state, prompt),
            Awaited.Done or Awaited.Part => prompt.Numbers.FirstOrDefault(n => n.Value is not null)
                is { Value: { } shown } worked
                ? Of(worked.Name, shown)
                : null,
            _ => null,
        };

    /// <summary>A quantity under a label.</summary>
    public static Figure Of(string label, Quantity quantity) =>
        new(label, quantity.Value.ToString(CultureInfo.InvariantCulture), quantity.Unit.Symbol);

    private static Figure? OfReading(RunState state, Prompt prompt)
    {
        Judgement window = prompt.Window;
        return window.Aim is { } aim ? Of("aim", aim)
            : window.High is { } high ? Of("at most", high)
            : window.Low is { } low ? Of("at least", low)
            : Last(state, prompt) is { } last ? Of("last time", last)
            : null;
    }

    private static Quantity? Last(RunState state, Prompt prompt) =>
        state.Value(
            prompt.Step.Taking!.Characteristic,
            state.Plan.IsOfHead(prompt.Step.Taking.Characteristic) ? At.Head : prompt.At.Position
        )
            is { } value
            ? value.Value
            : null;
}
