using System.CommandLine;
using System.Globalization;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Trail;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary><c>verify [STAMP]</c>: does the trail hold, and every signature in it.</summary>
internal static class VerifyVerb
{
    private const string Demo = "This is the demo shop: its PINs are public, so its sign-offs prove nothing.";

    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Argument<string?> stamp = new("stamp")
        {
            Description = "the job's stamp or proof code; none: the shop book and every job",
            Arity = ArgumentArity.ZeroOrOne,
        };
        Option<bool> json = JsonOption.Create();
        Command verb = new("verify", "check that the trails hold, end to end, with every signature in them")
        {
            stamp,
            json,
        };
        verb.SetAction(parsed =>
        {
            string? wanted = parsed.GetValue(stamp)?.Trim();
            string folder = wanted is null ? StoreOption.ToRead(parsed) : StoreOption.OfStamp(parsed, wanted);
            return Run(folder, wanted, parsed.GetValue(json));
        });
        return verb;
    }

    private static int Run(string folder, string? stamp, bool json)
    {
        (StoreReader? reader, string fault) = ShopFloor.Read(folder);
        if (reader is null)
        {
            return Say.Usage(fault, "");
        }

        ShopState shop = reader.ReadShop().Shop;
        ShopJob? job = stamp is null ? null : shop.FindJob(stamp);
        if (stamp is not null && job is null)
        {
            return Say.No(
                $"There is no job stamped {stamp}.",
                "procrunner verify without a stamp checks the shop book and every trail."
            );
        }

        Progress progress = new(Machine.Time, Console.Error, "jobs checked");
        IReadOnlyList<JobCheck> checks = JobCheck.Run(reader, shop, job, progress.Report);
        bool demo = DemoShop.Is(shop);
        if (json)
        {
            Say.Json(Answer(checks, reader, demo));
        }
        else
        {
            foreach (JobCheck check in checks)
            {
                Tell(check, reader);
            }

            if (demo)
            {
                Say.Line(Demo);
            }
        }

        return checks.All(c => c.Holds) ? Status.Done : Status.No;
    }

    private static void Tell(JobCheck check, StoreReader reader)
    {
        StoreFinding? first = check.Findings.FirstOrDefault(f => f.IsBroken);
        Say.Line(
            first is null
                ? $"{check.Name}: {reader.ReadTrail(check.Of).Verdict.InWords()}{Signatures(check)}"
                : $"{check.Name}: IT DOESN'T HOLD. {first.Text}"
        );
        foreach (StoreFinding finding in check.Findings.Where(f => f != first))
        {
            Say.Line($"  {finding.Text}");
        }

        if (check.IsPractice)
        {
            Say.Line("  A practice job: its sign-offs prove nothing.");
        }
    }

    private static string Signatures(JobCheck check) =>
        check.Of == JobId.Shop ? " Every person's key is certified up to the first lead."
        : check.Signatures == 0 ? " Nothing is signed yet."
        : string.Create(
            CultureInfo.InvariantCulture,
            $" Signatures checked against their signers' keys: {check.Signatures}, all good."
        );

    private static Json.Map Answer(IReadOnlyList<JobCheck> checks, StoreReader reader, bool demo) =>
        Json.MapOf(
            ("holds", new Json.Flag(checks.All(c => c.Holds))),
            ("demo", new Json.Flag(demo)),
            ("checked", Json.ListOf([.. checks.Select(c => Checked(c, reader))]))
        );

    private static Json.Map Checked(JobCheck check, StoreReader reader)
    {
        var holds = reader.ReadTrail(check.Of).Verdict as TrailVerdict.Holds;
        return Json.MapOf(
            ("what", new Json.Text(check.Name)),
            ("id", new Json.Text(check.Of)),
            ("holds", new Json.Flag(check.Holds)),
            ("entries", holds is null ? Json.Nothing : new Json.Whole(holds.Entries)),
            ("last", holds is null ? Json.Nothing : new Json.Text(holds.Last.ToString())),
            ("signatures", new Json.Whole(check.Signatures)),
            ("practice", new Json.Flag(check.IsPractice)),
            (
                "findings",
                Json.ListOf([
                    .. check.Findings.Select(f =>
                        Json.MapOf(
                            ("broken", new Json.Flag(f.IsBroken)),
                            ("entry", f.Entry is { } entry ? new Json.Whole(entry) : Json.Nothing),
                            ("text", new Json.Text(f.Text))
                        )
                    ),
                ])
            )
        );
    }
}
