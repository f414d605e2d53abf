using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Trail;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary><c>verify --code CODE</c>: the job that a paper record's proof code belongs to.</summary>
internal static class VerifyCode
{
    /// <summary>Finds and checks it; the exit status.</summary>
    public static int Run(string folder, string typed, bool json)
    {
        (StoreReader? reader, string fault) = ShopFloor.Read(folder);
        if (reader is null)
        {
            return Say.Usage(fault, "");
        }

        if (ProofCode.TryRead(typed, out fault) is not { } code)
        {
            return Say.Usage(fault, "Type the code again, as it stands on the paper.");
        }

        ShopState shop = reader.ReadShop().Shop;
        ShopJob? job = shop.Jobs.Values.FirstOrDefault(j =>
            j.IsClosedOut && j.LastAnchor is { } last && code.Matches(last.Digest)
        );
        if (job is not null)
        {
            Say.Aside($"{code} is the proof code of job {job.Stamp}.");
            return VerifyVerb.Job(reader, shop, job, json, recompute: false);
        }

        foreach ((string file, ExportedJob kept) in new ImportedJobs(reader).All())
        {
            if (kept.ReadTrail(kept.JobId).Entries is [.., var last] && code.Matches(last.Digest))
            {
                Say.Aside($"{code} is the proof code of job {kept.Stamp}, from elsewhere.");
                return VerifyFile.Run(file, json);
            }
        }

        return Say.No(
            $"{code} is a proof code, but no closed-out job here has it.",
            "Either the job is another shop's, or its trail was changed after it was closed out: procrunner verify checks them all."
        );
    }
}
