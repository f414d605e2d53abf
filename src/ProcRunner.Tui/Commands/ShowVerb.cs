using System.CommandLine;
using ProcRunner.People;
using ProcRunner.Runs;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;
using ProcRunner.Tui.Screens.Shop;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary><c>show STAMP</c>: one job's state and final values.</summary>
internal static class ShowVerb
{
    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Argument<string> stamp = new("stamp") { Description = "the job's stamp, or its proof code" };
        Option<string?> position = new("--position")
        {
            Description = "one position's whole story, in order; head for the head's own",
            HelpName = "position",
        };
        Option<bool> json = JsonOption.Create();
        Command verb = new("show", "one job: its state, final values, parts, decisions, sign-offs, notes, what is open")
        {
            stamp,
            position,
            json,
        };
        verb.SetAction(parsed =>
        {
            string wanted = parsed.GetValue(stamp)!.Trim();
            return Run(
                StoreOption.OfStamp(parsed, wanted),
                wanted,
                parsed.GetValue(position)?.Trim(),
                parsed.GetValue(json)
            );
        });
        return verb;
    }

    private static int Run(string folder, string stamp, string? position, bool json)
    {
        (StoreReader? reader, string fault) = ShopFloor.Read(folder);
        if (reader is null)
        {
            return Say.Usage(fault, "");
        }

        ShopJob? job = reader.ReadShop().Shop.FindJob(stamp);
        ExportedJob? elsewhere = job is null ? new ImportedJobs(reader).WithStamp(stamp).FirstOrDefault().Job : null;
        if (job is null && elsewhere is null)
        {
            return Say.No($"There is no job stamped {stamp}.", "procrunner jobs lists them.");
        }

        if (elsewhere is not null)
        {
            Say.Aside($"FROM ELSEWHERE: a job of {elsewhere.Shop}, imported. It can only be looked at.");
            if (!JobCheck.OfExported(elsewhere).Holds)
            {
                return Say.No("Its file doesn't hold any more.", $"procrunner verify {stamp} says what is wrong.");
            }
        }

        (JobAccount? account, fault) = elsewhere is null
            ? JobAccount.Read(reader, job!.Id)
            : JobAccount.Read(elsewhere, elsewhere.JobId);
        if (account is null)
        {
            return Say.No(fault, $"procrunner verify {stamp} says what is wrong with its trail.");
        }

        if (position is not null)
        {
            return Story(reader, account, position);
        }

        if (json)
        {
            Say.Json(JobAccountJson.Of(account));
            return Status.Done;
        }

        foreach (string line in JobAccountLines.Of(account))
        {
            Say.Line(line);
        }

        foreach (string link in JobLinks.Short(account.State, ShopFloor.IndexOf(reader)))
        {
            Say.Line(link);
        }

        return Status.Done;
    }

    private static int Story(StoreReader reader, JobAccount account, string name)
    {
        Plan plan = account.State.Plan;
        bool ofHead = string.Equals(name, plan.PositionName(At.Head), StringComparison.OrdinalIgnoreCase);
        int position = At.Head;
        if (!ofHead && !plan.TryPosition(name.ToUpperInvariant(), out position))
        {
            return Say.No(
                $"This head has no position {name}.",
                $"It has {string.Join(", ", plan.Positions.Select(p => p.Name))}, and head for itself."
            );
        }

        ShopState shop = reader.ReadShop().Shop;
        Say.Line($"{account.State.Job!.Stamp}, {plan.PositionName(position)}: its whole story");
        foreach (
            TextLine line in PositionStory.Of(
                account.State,
                reader.ReadTrail(account.State.JobId).Entries.Select(line => line.Entry),
                position,
                id => shop.People.TryGetValue(id, out Person? person) ? person.Name : id
            )
        )
        {
            Say.Line(new string(' ', line.Indent) + line.Text);
        }

        return Status.Done;
    }
}
