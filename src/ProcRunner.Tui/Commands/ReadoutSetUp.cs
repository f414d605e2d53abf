using System.CommandLine;
using System.Globalization;
using ProcRunner.People;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Shop;

namespace ProcRunner.Tui.Commands;

/// <summary><c>gauges readout</c>: how the machine's readout shows depth. Every target is given in its terms.</summary>
internal static class ReadoutSetUp
{
    private const string Deeper = "deeper";
    private const string Diameter = "diameter";
    private const string LastReset = "last-reset";
    private const string Preset = "preset";

    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Option<string?> unit = new("--unit") { Description = "the unit it shows: in, mm", HelpName = "unit" };
        Option<string?> step = new("--step") { Description = "its smallest step, in that unit", HelpName = "number" };
        Option<string?> grows = OneOf("--grows", "which way its number grows", Deeper, "upward");
        Option<string?> shows = OneOf("--shows", "the travel, or twice the travel", "travel", Diameter);
        Option<string?> counts = OneOf("--counts-from", "what it counts from", "one-zero", LastReset);
        Option<string?> touch = OneOf("--at-touch-off", "what it is set to at touch-off", "zero", Preset);
        Option<string?> by = ByOption.Create("id of the person who does it");
        Command verb = new("readout", "set up the machine's readout; what isn't named stays as it was")
        {
            unit,
            step,
            grows,
            shows,
            counts,
            touch,
            by,
        };
        verb.SetAction(parsed =>
            ShopChange.Write(
                StoreOption.OfShop(parsed),
                "gauges readout",
                desk =>
                {
                    (Person? person, string fault) = ByOption.Pick(desk.Shop, parsed.GetValue(by), lead: false);
                    if (person is null)
                    {
                        return fault;
                    }

                    Readout known = desk.Shop.Readout ?? new Readout(Units.One, 0, true, false, false, false);
                    (Readout? set, fault) = WithStep(known, parsed.GetValue(unit), parsed.GetValue(step));
                    return set is null
                        ? fault
                        : desk.SetReadout(
                            set with
                            {
                                GrowsDeeper = Is(parsed.GetValue(grows), Deeper, known.GrowsDeeper),
                                ShowsDiameter = Is(parsed.GetValue(shows), Diameter, known.ShowsDiameter),
                                StepMode = Is(parsed.GetValue(counts), LastReset, known.StepMode),
                                Preset = Is(parsed.GetValue(touch), Preset, known.Preset),
                            },
                            person.Id
                        );
                },
                desk => $"readout: {ReadoutWords.Of(desk.Shop.Readout!)}"
            )
        );
        return verb;
    }

    // A step is in the readout's unit, so another unit asks for another step.
    private static (Readout? Set, string Fault) WithStep(Readout known, string? unitText, string? stepText)
    {
        Unit? unit = unitText is null ? known.Unit : Units.Find(unitText);
        bool isStep = decimal.TryParse(
            stepText,
            NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out decimal step
        );
        step = stepText is null && unit == known.Unit ? known.Step : step;
        return unit is null || unit.Dimension != Dimension.OfLength
                ? (null, "The readout's unit is one of length: --unit in, or --unit mm.")
            : (stepText is not null && !isStep) || step <= 0
                ? (null, "The readout's smallest step is a number above 0 in its unit: --step 0.0005.")
            : (known with { Unit = unit, Step = step }, "");
    }

    private static bool Is(string? given, string word, bool known) => given is null ? known : given == word;

    private static Option<string?> OneOf(string name, string description, params string[] words)
    {
        Option<string?> option = new(name) { Description = description };
        option.AcceptOnlyFromAmong(words);
        return option;
    }
}
