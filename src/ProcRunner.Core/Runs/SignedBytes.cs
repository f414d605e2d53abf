using System.Globalization;
using ProcRunner.Procedures;
using ProcRunner.Text;
using ProcRunner.Trail;

namespace ProcRunner.Runs;

/// <summary>
/// The exact bytes a mark is a signature over. Canonical JSON with the signer's name, the time and the meaning (21 CFR
/// 11.50 as a model) and what is covered, so that a mark can't be moved to another job, step or result.
/// </summary>
public static class SignedBytes
{
    /// <summary>For a stage's sign-off: covers every result of the stage before it.</summary>
    public static byte[] OfStage(RunState state, At at, Mark mark) =>
        Write(
            state,
            at,
            mark,
            ((StepWork.Sign)state.Plan.StepAt(at.Step).Work).Meaning,
            CoversOf(state, at).ToString()
        );

    /// <summary>For the release: covers the whole trail up to its last entry.</summary>
    public static byte[] OfRelease(RunState state, At at, Mark mark, string lastDigest) =>
        Write(state, at, mark, "released", lastDigest);

    /// <summary>For a concession or a scrapping: covers the refused result and the reason.</summary>
    public static byte[] OfWay(RunState state, At at, WayKind kind, string reason, Mark mark) =>
        Write(
            state,
            at,
            mark,
            kind == WayKind.Scrap ? "scrapped" : "conceded",
            CoversOfWay(state, at, reason).ToString()
        );

    /// <summary>The digest of the refused result and the reason that a concession or a scrapping covers.</summary>
    public static Digest CoversOfWay(RunState state, At at, string reason) => Digest.Of(Result(state, at, reason));

    /// <summary>The digest of the results that a stage's sign-off covers.</summary>
    public static Digest CoversOf(RunState state, At at)
    {
        Plan plan = state.Plan;
        Step sign = plan.StepAt(at.Step);
        List<Json> results = [];
        for (int i = plan.Procedure.Stages[sign.StageIndex].FirstStep; i < sign.Index; i++)
        {
            foreach (int position in plan.PositionsOf(plan.StepAt(i)))
            {
                if (state.Find(new At(i, position)) is { Sequence: > 0 } record)
                {
                    results.Add(ResultOf(state, new At(i, position), record));
                }
            }
        }

        return Digest.Of(CanonicalJson.Write(Json.ListOf([.. results])));
    }

    private static Json.Map ResultOf(RunState state, At at, StepRecord record)
    {
        Step step = state.Plan.StepAt(at.Step);
        IEnumerable<Json> values = step
            .Gives.Select(name => (name, value: state.Value(name, at.Position)))
            .Where(v => v.value?.ByStep == at.Step)
            .Select(v => (Json)new Json.Text($"{v.name} {v.value!.Value}"));
        return Json.MapOf(
            ("at", new Json.Text(state.Plan.PositionName(at.Position))),
            ("said", new Json.Text(record.Said)),
            ("seq", new Json.Whole(record.Sequence)),
            ("step", new Json.Text(step.FullName)),
            ("values", Json.ListOf([.. values]))
        );
    }

    private static byte[] Result(RunState state, At at, string reason)
    {
        StepRecord record = state.Find(at) ?? new StepRecord();
        return CanonicalJson.Write(
            Json.MapOf(("reason", new Json.Text(SafeText.Clean(reason))), ("result", ResultOf(state, at, record)))
        );
    }

    private static byte[] Write(RunState state, At at, Mark mark, string meaning, string covers) =>
        CanonicalJson.Write(
            Json.MapOf(
                ("covers", new Json.Text(covers)),
                ("job", new Json.Text(state.JobId)),
                ("meaning", new Json.Text(meaning)),
                ("name", new Json.Text(mark.Name)),
                ("person", new Json.Text(mark.Person)),
                ("position", new Json.Text(state.Plan.PositionName(at.Position))),
                ("step", new Json.Text(state.Plan.StepAt(at.Step).FullName)),
                (
                    "time",
                    new Json.Text(
                        mark.At.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ss.fffZ", CultureInfo.InvariantCulture)
                    )
                )
            )
        );
}
