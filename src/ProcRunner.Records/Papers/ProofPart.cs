using System.Globalization;
using ProcRunner.Procedures;
using ProcRunner.Records.Story;

namespace ProcRunner.Records.Papers;

/// <summary>Where the record comes from, and how anyone checks it.</summary>
internal static class ProofPart
{
    /// <summary>Its pieces.</summary>
    public static IEnumerable<Block> Of(BuildRecord record)
    {
        Proof proof = record.Proof;
        yield return new Block.Heading(2, "Where this comes from, and how to check it");
        yield return new Block.Paragraph(
            "Every number here was entered at the machine, with who and when, and with which gauge where the shop keeps one for it, into a trail of entries that can't be changed unseen: each entry holds the digest of the one before. Nothing is taken out of the trail. This record shows the latest of each value and, under its valve, what stood before; what was corrected stands beside its correction. The shop keeps the trail and can prove that this record is of it."
        );
        yield return new Block.Facts([
            .. Codes(proof),
            ("Job in the store", record.JobId),
            ("Last entry", PaperMaker.Number(proof.LastEntry)),
            ("Its SHA-256", proof.LastDigest.ToString()),
            (
                "Procedure",
                $"{record.Plan.Procedure.Title} ({record.Plan.Procedure.Name}), revision {PaperMaker.Number(record.Plan.Procedure.Revision)}{Since(record.Plan.Procedure.Revised)}, SHA-256 {record.Job.ProcedureDigest}"
            ),
            (
                "Head spec",
                $"{record.Plan.Head.Title} ({record.Plan.Head.Name}), revision {PaperMaker.Number(record.Plan.Head.Revision)}{Since(record.Plan.Head.Revised)}, SHA-256 {record.Job.HeadDigest}"
            ),
            ("First lead's key", proof.RootName.Length > 0 ? $"{proof.RootName}, {proof.RootFingerprint}" : "none"),
        ]);
        if (record.IsDemo)
        {
            yield return new Block.Paragraph(
                "In the demo shop everybody knows the PINs, so the signatures prove nothing."
            );
        }
    }

    private static string Since(Revised? revised) =>
        revised is null
            ? ""
            : $" of {revised.On.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)} ({revised.What.TrimEnd('.')})";

    private static IEnumerable<(string Label, string Text)> Codes(Proof proof) =>
        proof.Code is { } code
            ? [("Proof code", code.ToString()), ("Check by the code", $"procrunner verify --code {code}")]
            : [("Proof code", "none: the job isn't closed out")];
}
