using ProcRunner.Store.Local;

namespace ProcRunner.Tui.Jobs;

/// <summary>What of a job a search found, where the list of jobs doesn't show it anyway.</summary>
internal static class HitWords
{
    /// <summary>In words; empty where stamp or customer show it.</summary>
    public static string Of(JobHit hit) =>
        hit.Field switch
        {
            JobField.Stamp when hit.IsLike => "its stamp is like that",
            JobField.Part or JobField.Lot or JobField.Head => hit.Found,
            JobField.Gauge => $"gauge {hit.Found}",
            JobField.Cutter => $"cutter {hit.Found}",
            JobField.Person => $"worked on by {hit.Found}",
            JobField.Proof => $"the job of the proof code {hit.Found}",
            JobField.Note => $"\"{hit.Found}\"",
            _ => "",
        };
}
