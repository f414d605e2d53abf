using System.CommandLine;
using System.Globalization;
using ProcRunner.People;
using ProcRunner.Quantities;
using ProcRunner.Shop;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary>The verbs under <c>gauges</c> that bring a gauge into use or change what is known of it.</summary>
internal static class GaugeChanges
{
    private const string ByHelp = "id of the person who does it";

    /// <summary><c>gauges add</c>.</summary>
    public static Command Add()
    {
        Argument<string> id = new("id") { Description = "short, as marked on the gauge" };
        Argument<string> name = new("name") { Description = "what people call it" };
        Option<string> kind = Needed("--kind", "what kind it is, as procedures name kinds: micrometer, bore, depth …");
        Option<string> resolution = Needed("--resolution", "the smallest step it shows, with its unit: \"0.0001 in\"");
        Option<string> uncertainty = Needed("--uncertainty", "its expanded uncertainty (k = 2), with its unit");
        Option<string?> turn = Figure("--turn", "what one turn of its dial is");
        Option<string?> until = Until();
        Option<string?> by = ByOption.Create(ByHelp);
        Command verb = new("add", "a gauge comes into use")
        {
            id,
            name,
            kind,
            resolution,
            uncertainty,
            turn,
            until,
            by,
        };
        verb.SetAction(parsed =>
        {
            string wanted = parsed.GetValue(id)!;
            Gauge blank = new(wanted, parsed.GetValue(name)!, parsed.GetValue(kind)!, default, default, null, null);
            return Write(
                StoreOption.OfShop(parsed),
                parsed.GetValue(by),
                wanted,
                _ =>
                    Figured(
                        blank,
                        parsed.GetValue(resolution),
                        parsed.GetValue(uncertainty),
                        parsed.GetValue(turn),
                        parsed.GetValue(until)
                    ),
                (desk, gauge, person) => desk.AddGauge(gauge, person)
            );
        });
        return verb;
    }

    /// <summary><c>gauges change</c>.</summary>
    public static Command Change()
    {
        Argument<string> id = new("id") { Description = "which gauge" };
        Option<string?> name = new("--name") { Description = "what people call it", HelpName = "name" };
        Option<string?> resolution = Figure("--resolution", "the smallest step it shows, with its unit");
        Option<string?> uncertainty = Figure("--uncertainty", "its expanded uncertainty (k = 2), with its unit");
        Option<string?> turn = Figure("--turn", "what one turn of its dial is");
        Option<string?> until = Until();
        Option<string?> by = ByOption.Create(ByHelp);
        Command verb = new("change", "a gauge was calibrated, repaired or renamed; the rest stays as it was")
        {
            id,
            name,
            resolution,
            uncertainty,
            turn,
            until,
            by,
        };
        verb.SetAction(parsed =>
        {
            string wanted = parsed.GetValue(id)!;
            return Write(
                StoreOption.OfShop(parsed),
                parsed.GetValue(by),
                wanted,
                shop =>
                    shop.Gauges.TryGetValue(wanted, out Gauge? known)
                        ? Figured(
                            known with
                            {
                                Name = parsed.GetValue(name) ?? known.Name,
                            },
                            parsed.GetValue(resolution),
                            parsed.GetValue(uncertainty),
                            parsed.GetValue(turn),
                            parsed.GetValue(until)
                        )
                        : (null, $"There is no gauge {wanted}: procrunner gauges lists them."),
                (desk, gauge, person) => desk.ChangeGauge(gauge, person)
            );
        });
        return verb;
    }

    private static int Write(
        string folder,
        string? by,
        string id,
        Func<ShopState, (Gauge? Gauge, string Fault)> read,
        Func<ShopDesk, Gauge, string, string?> change
    ) =>
        ShopChange.Write(
            folder,
            "gauges",
            desk =>
            {
                (Person? person, string fault) = ByOption.Pick(desk.Shop, by, lead: false);
                if (person is null)
                {
                    return fault;
                }

                (Gauge? gauge, fault) = read(desk.Shop);
                return gauge is null ? fault : change(desk, gauge, person.Id);
            },
            desk => GaugesVerb.InWords(desk.Shop.Gauges[ShopDesk.Tidy(id)])
        );

    private static (Gauge? Gauge, string Fault) Figured(
        Gauge gauge,
        string? resolution,
        string? uncertainty,
        string? turn,
        string? until
    )
    {
        Quantity?[] read = [Read(resolution), Read(uncertainty), Read(turn)];
        string?[] given = [resolution, uncertainty, turn];
        int bad = Array.FindIndex(given, text => text is not null && Read(text) is null);
        if (bad >= 0)
        {
            return (null, $"\"{given[bad]}\" is no amount above nothing with a unit, as in \"0.0001 in\".");
        }

        (bool isDay, DateOnly? day) = Day(until, gauge.CalibratedUntil);
        if (!isDay)
        {
            return (null, $"\"{until}\" is no day: write 2027-05-31, or none.");
        }

        Gauge figured = gauge with
        {
            Resolution = read[0] ?? gauge.Resolution,
            Uncertainty = read[1] ?? gauge.Uncertainty,
            Turn = read[2] ?? gauge.Turn,
            CalibratedUntil = day,
        };
        return (figured, "");
    }

    private static Quantity? Read(string? text) =>
        text is not null && Quantity.TryParse(text, out Quantity amount) && amount.Value > 0 ? amount : null;

    private static (bool IsDay, DateOnly? Day) Day(string? text, DateOnly? known) =>
        text is null ? (true, known)
        : text == "none" ? (true, null)
        : DateOnly.TryParseExact(
            text,
            "yyyy-MM-dd",
            CultureInfo.InvariantCulture,
            DateTimeStyles.None,
            out DateOnly day
        )
            ? (true, day)
        : (false, null);

    private static Option<string> Needed(string name, string description) =>
        new(name)
        {
            Description = description,
            HelpName = name[2..],
            Required = true,
        };

    private static Option<string?> Figure(string name, string description) =>
        new(name) { Description = description, HelpName = name[2..] };

    private static Option<string?> Until() =>
        new("--until")
        {
            Description = "the last day on which its calibration holds (2027-05-31), or none",
            HelpName = "day",
        };
}
