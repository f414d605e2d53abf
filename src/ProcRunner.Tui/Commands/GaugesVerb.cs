using System.CommandLine;
using System.Globalization;
using ProcRunner.Runs;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Trail;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary><c>gauges</c>: what the shop measures with, and how the machine's readout is set up.</summary>
internal static class GaugesVerb
{
    /// <summary>The verb with its own verbs.</summary>
    public static Command Create()
    {
        Option<bool> json = JsonOption.Create();
        Command verb = new("gauges", "list the gauges and the readout; add or change a gauge, set up the readout")
        {
            json,
            GaugeChanges.Add(),
            GaugeChanges.Change(),
            ReadoutSetUp.Create(),
        };
        verb.SetAction(parsed => List(StoreOption.ToRead(parsed), parsed.GetValue(json)));
        return verb;
    }

    /// <summary>A gauge in words.</summary>
    public static string InWords(Gauge gauge)
    {
        string turn = gauge.Turn is { } one ? $", a turn is {one}" : "";
        string until = gauge.CalibratedUntil is { } day ? $", calibrated until {Day(day)}" : ", not calibrated by date";
        return $"{gauge.Id}  {gauge.Kind}: {gauge.Name}, reads to {gauge.Resolution}, uncertainty {gauge.Uncertainty}{turn}{until}";
    }

    private static int List(string folder, bool json)
    {
        (StoreReader? reader, string fault) = ShopFloor.Read(folder);
        if (reader is null)
        {
            return Say.Usage(fault, PeopleVerb.HowToFound);
        }

        ShopState shop = reader.ReadShop().Shop;
        if (json)
        {
            Say.Json(
                Json.MapOf(
                    ("gauges", Json.ListOf([.. shop.Gauges.Values.Select(Entry)])),
                    ("readout", shop.Readout is { } set ? new Json.Text(ReadoutWords.Of(set)) : Json.Nothing)
                )
            );
            return Status.Done;
        }

        var today = DateOnly.FromDateTime(Machine.Time.GetLocalNow().DateTime);
        foreach (Gauge gauge in shop.Gauges.Values)
        {
            Say.Line($"{InWords(gauge)}{(gauge.CalibratedUntil < today ? ": OVERDUE" : "")}");
        }

        Say.Line(
            shop.Readout is { } readout
                ? $"readout: {ReadoutWords.Of(readout)}"
                : "readout: not set up yet (procrunner gauges readout)"
        );
        return Status.Done;
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static Json.Map Entry(Gauge gauge) =>
        Json.MapOf(
            ("id", new Json.Text(gauge.Id)),
            ("name", new Json.Text(gauge.Name)),
            ("kind", new Json.Text(gauge.Kind)),
            ("resolution", new Json.Text(gauge.Resolution.ToString())),
            ("uncertainty", new Json.Text(gauge.Uncertainty.ToString())),
            ("turn", gauge.Turn is { } turn ? new Json.Text(turn.ToString()) : Json.Nothing),
            ("calibrated-until", gauge.CalibratedUntil is { } day ? new Json.Text(Day(day)) : Json.Nothing)
        );
}
