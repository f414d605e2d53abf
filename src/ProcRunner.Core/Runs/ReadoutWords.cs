namespace ProcRunner.Runs;

/// <summary>A readout's set-up in words, as it is confirmed at each zero and kept in the trail.</summary>
public static class ReadoutWords
{
    /// <summary>The words.</summary>
    public static string Of(Shop.Readout readout) =>
        string.Create(
            System.Globalization.CultureInfo.InvariantCulture,
            $"{readout.Unit} by {readout.Step}, grows {(readout.GrowsDeeper ? "deeper" : "upward")}, shows {(readout.ShowsDiameter ? "twice the travel" : "travel")}, counts from {(readout.StepMode ? "its last reset" : "one zero")}, {(readout.Preset ? "preset to the measured value" : "zeroed at touch-off")}"
        );
}
