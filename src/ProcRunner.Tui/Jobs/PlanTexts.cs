using ProcRunner.Problems;
using ProcRunner.Procedures;
using ProcRunner.Procedures.Checks;
using ProcRunner.Runs;
using ProcRunner.Trail;
using ProcRunner.Yaml;

namespace ProcRunner.Tui.Jobs;

/// <summary>A procedure and a head spec as read from their texts, joined, with the texts a job pins.</summary>
/// <param name="Plan">The two joined.</param>
/// <param name="ProcedureText">The procedure's text.</param>
/// <param name="HeadText">The head spec's text.</param>
internal sealed record PlanTexts(Plan Plan, byte[] ProcedureText, byte[] HeadText)
{
    /// <summary>SHA-256 of the procedure's text.</summary>
    public Digest ProcedureDigest { get; } = Digest.Of(ProcedureText);

    /// <summary>SHA-256 of the head spec's text.</summary>
    public Digest HeadDigest { get; } = Digest.Of(HeadText);

    /// <summary>Reads and joins two texts; null with every problem when they don't hold.</summary>
    public static (PlanTexts? Texts, IReadOnlyList<Problem> Problems) Read(
        string procedureName,
        byte[] procedureText,
        string headName,
        byte[] headText
    )
    {
        Loaded<Procedure> procedure = ProcedureFile.Load(procedureName, procedureText);
        Loaded<HeadSpec> head = HeadSpecFile.Load(headName, headText);
        List<Problem> problems = [.. procedure.Problems, .. head.Problems];
        if (procedure.Value is not { } steps || head.Value is not { } spec)
        {
            return (null, problems);
        }

        problems.AddRange(PlanCheck.Join(steps, spec, headName));
        return problems.Count > 0 ? (null, problems) : (new(new Plan(steps, spec), procedureText, headText), []);
    }
}
