using System.CommandLine;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Trail;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary><c>verify [STAMP or FILE]</c>: does the trail hold, and every signature in it.</summary>
internal static class VerifyVerb
{
    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Argument<string?> what = new("stamp")
        {
            Description = "the job's stamp, or an exported job's file; none: the shop book and every job",
            Arity = ArgumentArity.ZeroOrOne,
        };
        Option<string?> code = new("--code")
        {
            Description = "the proof code on a paper record: find its job and check it",
            HelpName = "code",
        };
        Option<bool> recompute = new("--recompute")
        {
            Description = "also list where today's program would decide otherwise",
        };
        Option<bool> json = JsonOption.Create();
        Command verb = new("verify", "check that the trails hold, end to end, with every signature in them")
        {
            what,
            code,
            recompute,
            json,
        };
        verb.SetAction(parsed =>
        {
            string? wanted = parsed.GetValue(what)?.Trim();
            bool asJson = parsed.GetValue(json);
            if (parsed.GetValue(code) is { } typed)
            {
                return wanted is null
                    ? VerifyCode.Run(StoreOption.ToRead(parsed), typed, asJson)
                    : Say.Usage("--code finds the job by itself: give the code alone.", "");
            }

            string folder = wanted is null ? StoreOption.ToRead(parsed) : StoreOption.OfStamp(parsed, wanted);
            return wanted is not null && File.Exists(wanted) && !IsStamp(folder, wanted)
                ? VerifyFile.Run(wanted, asJson)
                : Run(folder, wanted, asJson, parsed.GetValue(recompute));
        });
        return verb;
    }

    /// <summary>Checks the shop book and one job of a store; the exit status.</summary>
    public static int Job(StoreReader reader, ShopState shop, ShopJob? job, bool json, bool recompute)
    {
        Progress progress = new(Machine.Time, Console.Error, "jobs checked");
        IReadOnlyList<JobCheck> own = JobCheck.Run(reader, shop, job, progress.Report);
        List<(JobCheck Check, ITrailReader Reader)> checks = [.. own.Select(check => (check, (ITrailReader)reader))];
        if (job is null)
        {
            checks.AddRange(JobFile.CheckKept(reader));
        }

        bool demo = DemoShop.Is(shop);
        JobCheck[] again = recompute ? [.. own.Where(c => c.Of != JobId.Shop)] : [];
        if (json)
        {
            (string, Json)[] otherwise = recompute ? [("otherwise", VerifyAgain.Of(reader, again))] : [];
            Say.Json(VerifyAnswer.Of(checks, demo, otherwise));
        }
        else
        {
            foreach ((JobCheck check, ITrailReader from) in checks)
            {
                VerifyAnswer.Tell(check, from);
            }

            VerifyAgain.Tell(reader, again);
            VerifyAnswer.TellOfDemo(demo, shop.Name);
            TellOfCopies([.. own.Where(c => !c.Holds)], reader);
        }

        return checks.TrueForAll(c => c.Check.Holds) ? Status.Done : Status.No;
    }

    // Whole files that don't fit together: cut short, or copied one after the other.
    private static void TellOfCopies(JobCheck[] broken, StoreReader reader)
    {
        if (broken.Length > 0 && Array.TrueForAll(broken, c => reader.ReadTrail(c.Of).Verdict is TrailVerdict.Holds))
        {
            Say.Aside(
                "If this folder is a copy that was made while somebody worked: procrunner --store IT backup FOLDER --what-agrees takes what its files agree on, and says what it leaves out."
            );
        }
    }

    private static bool IsStamp(string folder, string wanted) =>
        ShopFloor.Read(folder).Reader?.ReadShop().Shop.JobsWithStamp(wanted).Any() == true;

    private static int Run(string folder, string? stamp, bool json, bool recompute)
    {
        (StoreReader? reader, string fault) = ShopFloor.Read(folder);
        if (reader is null)
        {
            return Say.Usage(fault, "");
        }

        ShopState shop = reader.ReadShop().Shop;
        ShopJob? job = stamp is null ? null : shop.JobsWithStamp(stamp).FirstOrDefault();
        if (stamp is null || job is not null)
        {
            return Job(reader, shop, job, json, recompute);
        }

        return new ImportedJobs(reader).WithStamp(stamp) is [var kept, ..]
            ? VerifyFile.Run(kept.File, json)
            : Say.No(
                $"There is no job stamped {stamp}, and no file of that name.",
                "procrunner verify without a stamp checks the shop book and every trail."
            );
    }
}
