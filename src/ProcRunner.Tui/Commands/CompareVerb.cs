using System.CommandLine;
using ProcRunner.People;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary>
/// <c>compare STAMP</c>: a comeback beside how the head went out, and the heads of one engine side by side; links heads, and
/// writes down how they go out.
/// </summary>
internal static class CompareVerb
{
    private const int Width = 78;

    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Argument<string> stamp = new("stamp") { Description = "the job's stamp" };
        Option<string?> link = new("--link")
        {
            Description = "the stamp of another head of the same engine: from now on they are linked",
            HelpName = "stamp",
        };
        Option<bool> together = new("--together")
        {
            Description = "writes down that the heads match and go out together",
        };
        Option<string?> apart = new("--apart")
        {
            Description = "writes down that this head goes out although the other differs or isn't known, and why",
            HelpName = "why",
        };
        Option<string?> by = ByOption.Create("id of the person who links or decides");
        Command verb = new("compare", "a head that came back beside how it went out; heads of one engine side by side")
        {
            stamp,
            link,
            together,
            apart,
            by,
        };
        verb.SetAction(parsed =>
        {
            string wanted = parsed.GetValue(stamp)!.Trim();
            string folder = StoreOption.OfStamp(parsed, wanted);
            string? other = parsed.GetValue(link)?.Trim();
            string? why = parsed.GetValue(apart);
            bool decides = parsed.GetValue(together) || why is not null;
            return parsed.GetValue(together) && why is not null ? Say.Usage("Either --together or --apart.", "")
                : other is not null || decides
                    ? Write(folder, wanted, other, decides ? (why is null, why ?? "") : null, parsed.GetValue(by))
                : Show(folder, wanted);
        });
        return verb;
    }

    private static int Show(string folder, string stamp)
    {
        (StoreReader? reader, string fault) = ShopFloor.Read(folder);
        if (reader is null)
        {
            return Say.Usage(fault, "");
        }

        if (reader.ReadShop().Shop.JobsWithStamp(stamp).FirstOrDefault() is not { } job)
        {
            return Say.No($"There is no job stamped {stamp}.", "procrunner jobs lists them.");
        }

        (JobReading? here, fault) = JobReading.Read(reader, job.Id);
        if (here is null)
        {
            return Say.No(fault);
        }

        IReadOnlyList<string> lines = JobLinks.Lines(reader, ShopFloor.IndexOf(reader), here.State, Width);
        foreach (string line in lines)
        {
            Say.Line(line);
        }

        return lines.Count > 0
            ? Status.Done
            : Say.No(
                $"{stamp} is no comeback, nor did it come back, and no other head is linked with it.",
                "--link STAMP links one."
            );
    }

    private static int Write(
        string folder,
        string stamp,
        string? other,
        (bool Together, string Why)? decided,
        string? by
    )
    {
        (LocalStore? opened, string fault) = ShopFloor.Open(folder, "compare");
        if (opened is null)
        {
            return Say.Usage(fault, "");
        }

        using LocalStore store = opened;
        (Person? person, fault) = ByOption.Pick(store.Shop, by, lead: false);
        (JobRun? job, string fault2) = Open(store, stamp, person?.Id ?? "");
        if (person is null || job is null)
        {
            return Say.Usage(person is null ? fault : fault2, "");
        }

        if (other is not null)
        {
            (JobRun? second, fault) = Open(store, other, person.Id);
            if (second is null)
            {
                return Say.No(fault);
            }

            if (EngineHeads.Link(job, second) is { } notLinked)
            {
                return Say.No(notLinked);
            }

            Say.Line($"{stamp} and {other} are heads of one engine from now on.");
        }

        if (decided is { } way)
        {
            JobAnswer answer = EngineHeads.Decide(store.Reader, job, way.Together, way.Why);
            if (answer is JobAnswer.Refused refused)
            {
                return Say.No(refused.Why, string.Join(Environment.NewLine, refused.WhatToDo));
            }

            if (answer is JobAnswer.NotWritten failed)
            {
                return Say.Usage($"NOT WRITTEN: {failed.Why}", "");
            }

            Say.Line(way.Together ? "Written down: they match." : "Written down: released apart.");
        }

        return Status.Done;
    }

    private static (JobRun? Run, string Fault) Open(LocalStore store, string stamp, string person)
    {
        if (store.Shop.JobsWithStamp(stamp).FirstOrDefault() is not { } job)
        {
            return (null, $"There is no job stamped {stamp}.");
        }

        (JobRun? run, string fault) = JobRun.Resume(store, Machine.Time, job.Id, person);
        run?.StandIn(person);
        return (run, fault);
    }
}
