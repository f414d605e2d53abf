using ProcRunner.People;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Demo;

/// <summary>
/// The demo shop: invented people, gauges and one head, to try the program on. Its PINs are public, so its sign-offs prove
/// nothing.
/// </summary>
internal static class DemoShop
{
    /// <summary>The demo job's stamp; later ones are DEMO-2, DEMO-3.</summary>
    public const string Stamp = "DEMO";

    /// <summary>The person signed in when the demo shop opens.</summary>
    public const string Operator = "vale";

    /// <summary>The people of the demo shop with their public PINs.</summary>
    public static IReadOnlyList<(string Id, string Name, Role Role, string Pin)> People { get; } =
    [
        ("moss", "T. Moss (demo)", Role.Lead, "135790"),
        ("vale", "R. Vale (demo)", Role.Operator, "2468"),
        ("finch", "A. Finch (demo)", Role.Trainee, "1357"),
    ];

    /// <summary>The demo shop's name, by which it is told from a real one.</summary>
    public const string Name = "Demo shop (invented)";

    /// <summary>What its records say of where it is found.</summary>
    public const string Contact = "nowhere, no telephone (invented)";

    /// <summary>Rounds for PINs that everybody knows: enough to be real, few enough not to wait for.</summary>
    public const int Rounds = 10_000;

    /// <summary>True for the demo job's stamp.</summary>
    public static bool IsDemo(string stamp) =>
        string.Equals(stamp, Stamp, StringComparison.OrdinalIgnoreCase)
        || stamp.StartsWith(Stamp + "-", StringComparison.OrdinalIgnoreCase);

    /// <summary>True for the demo shop.</summary>
    public static bool Is(ShopState shop) => shop.Name == Name;

    /// <summary>The public PINs in words.</summary>
    public static string Pins => string.Join(", ", People.Select(p => $"{p.Id} ({RoleWord.Of(p.Role)}) {p.Pin}"));

    /// <summary>Opens the demo shop in a folder, and makes what isn't there: also what a program that was killed left out.</summary>
    public static (LocalStore? Store, string Fault) Open(string folder, string purpose)
    {
        (LocalStore? store, string fault) = StoreFolder.Exists(folder)
            ? ShopFloor.Open(folder, purpose)
            : ShopFloor.Found(folder, Name, purpose);
        if (store is null || !Is(store.Shop) || store.Shop.People.Count > 0)
        {
            return (store, fault);
        }

        var today = DateOnly.FromDateTime(Machine.Time.GetLocalNow().DateTime);
        (LocalStore? made, fault) = Furnish(
            store,
            Gauges(today),
            new Readout(Units.Inch, 0.0005m, true, false, false, false)
        );
        string? notSet = made is null
            ? null
            : new ShopDesk(made, Machine.Entropy, Rounds).SetContact(Contact, People[0].Id, People[0].Pin);
        if (notSet is null)
        {
            return (made, fault);
        }

        made!.Dispose();
        return (null, notSet);
    }

    /// <summary>Brings the demo's people, gauges and a readout into a store that has nobody yet; closes it when that fails.</summary>
    public static (LocalStore? Store, string Fault) Furnish(
        LocalStore store,
        IEnumerable<Gauge> gauges,
        Readout readout
    )
    {
        List<ShopEvent> events = [];
        Person? lead = null;
        foreach ((string id, string name, Role role, string pin) in People)
        {
            Certifier? by = lead is null ? null : new Certifier(lead, People[0].Pin);
            if (PersonKeys.Create(id, name, role, pin, Rounds, Machine.Entropy, by) is not PersonMaking.Made made)
            {
                throw new System.Diagnostics.UnreachableException();
            }

            lead ??= made.Person;
            events.Add(new ShopEvent.PersonAdded(made.Person));
        }

        events.AddRange(gauges.Select(g => new ShopEvent.GaugeAdded(g)));
        events.Add(new ShopEvent.ReadoutSet(readout));
        if (store.AppendShop(People[0].Id, [.. events]) is AppendResult.Written)
        {
            return (store, "");
        }

        store.Dispose();
        return (null, "People and gauges couldn't be written.");
    }

    /// <summary>Opens the demo job that is under way, or a new one.</summary>
    public static (JobRun? Run, string Fault) OpenJob(LocalStore store, string stamp)
    {
        if (!Is(store.Shop))
        {
            return (null, $"{stamp} is kept for the demo job, and this is the store of {store.Shop.Name}.");
        }

        if (store.Shop.JobsWithStamp(stamp).FirstOrDefault() is { IsClosedOut: false } open)
        {
            return JobRun.Resume(store, Machine.Time, open.Id, Operator);
        }

        int next = 2;
        string free = Stamp;
        while (store.Shop.JobsWithStamp(free).Any())
        {
            ShopJob there = store.Shop.JobsWithStamp(free).First();
            if (!there.IsClosedOut)
            {
                return JobRun.Resume(store, Machine.Time, there.Id, Operator);
            }

            free = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Stamp}-{next++}");
        }

        (PlanTexts? texts, IReadOnlyList<Problems.Problem> problems) = ReadPlan();
        return texts is null
            ? (null, string.Join(Environment.NewLine, problems))
            : JobRun.Begin(store, Machine.Time, texts, Header(texts, free), Operator);
    }

    /// <summary>The demo's procedure and head spec, as they come with the program.</summary>
    public static (PlanTexts? Texts, IReadOnlyList<Problems.Problem> Problems) ReadPlan()
    {
        string procedure = Path.Combine(Machine.ProceduresFolder, "two-valve-iron.yaml");
        string head = Path.Combine(Machine.ProceduresFolder, "heads", "pump-four.yaml");
        return PlanTexts.Read(
            "procedures/two-valve-iron.yaml",
            File.ReadAllBytes(procedure),
            "procedures/heads/pump-four.yaml",
            File.ReadAllBytes(head)
        );
    }

    private static JobHeader Header(PlanTexts texts, string stamp) =>
        new()
        {
            Stamp = stamp,
            ProcedureDigest = texts.ProcedureDigest.ToString(),
            HeadDigest = texts.HeadDigest.ToString(),
            Customer = "Lower Field irrigation (invented)",
            Complaint = "hard to start, low compression on 2",
            EarlierWork = "skimmed once by another shop, 0.009 in by the stamp beside the casting number",
        };

    /// <summary>The demo's gauges.</summary>
    /// <param name="today">The day from which their calibration runs, each to the end of another month; null: no date is kept.</param>
    internal static IEnumerable<Gauge> Gauges(DateOnly? today)
    {
        const int LeastMonths = 5;
        int months = LeastMonths;
        (string Id, string Name, string Kind, string Resolution, string Uncertainty, string? Turn)[] gauges =
        [
            ("M1", "outside micrometer 0 to 6 (demo)", "micrometer", "0.0001 in", "0.00005 in", "0.025 in"),
            ("B1", "small bore gauge (demo)", "bore", "0.0001 in", "0.00005 in", "0.010 in"),
            ("D1", "depth gauge on its bridge (demo)", "depth", "0.0001 in", "0.0002 in", "0.100 in"),
            ("I1", "dial indicator (demo)", "indicator", "0.0001 in", "0.0001 in", "0.010 in"),
            ("C1", "caliper (demo)", "caliper", "0.0005 in", "0.001 in", null),
            ("S1", "spring tester (demo)", "spring tester", "1 lbf", "0.8 lbf", null),
            ("V1", "vacuum gauge (demo)", "vacuum", "0.5 inHg", "0.5 inHg", null),
            ("R1", "roughness tester (demo)", "roughness", "1 uin", "4 uin", null),
        ];
        foreach ((string id, string name, string kind, string resolution, string uncertainty, string? turn) in gauges)
        {
            yield return new Gauge(
                id,
                name,
                kind,
                Read(resolution),
                Read(uncertainty),
                turn is null ? null : Read(turn),
                EndOfMonth(today?.AddMonths(months++))
            );
        }
    }

    private static DateOnly? EndOfMonth(DateOnly? day) =>
        day is { } some ? new DateOnly(some.Year, some.Month, DateTime.DaysInMonth(some.Year, some.Month)) : null;

    private static Quantity Read(string text) =>
        Quantity.TryParse(text, out Quantity quantity)
            ? quantity
            : throw new ArgumentException($"\"{text}\" is no quantity.", nameof(text));
}
