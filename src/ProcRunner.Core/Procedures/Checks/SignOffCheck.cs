using ProcRunner.Problems;

namespace ProcRunner.Procedures.Checks;

/// <summary>Holds that a person signs for every reading, and that the release stands at the end and there alone.</summary>
internal static class SignOffCheck
{
    public static IEnumerable<Problem> Run(Procedure procedure, string file)
    {
        foreach (Stage stage in procedure.Stages)
        {
            Step[] steps = [.. procedure.Steps.Skip(stage.FirstStep).Take(stage.StepCount)];
            Step? last = steps.LastOrDefault(step => step.Taking is not null);
            if (last is not null && !steps.Any(step => step.Index > last.Index && step.Work is StepWork.Sign))
            {
                yield return new Problem(
                    "PR-P09",
                    last.Source,
                    $"'{last.FullName}' takes a reading that nobody signs for; add '- sign: measured' after it in this stage"
                );
            }
        }

        Step[] releases =
        [
            .. procedure.Steps.Where(step => step.Work is StepWork.Sign { Meaning: SignMeanings.Released }),
        ];
        if (releases.Length == 0)
        {
            yield return new Problem(
                "PR-P08",
                new Place(file, 0, 0),
                "the procedure never releases the head; end its last stage with '- sign: released'"
            );
        }

        foreach (Step early in releases.Where(step => step.Index != procedure.Steps.Count - 1))
        {
            yield return new Problem(
                "PR-P08",
                early.Source,
                "the release ends the job, but steps follow it; let it be the last step, and the only release"
            );
        }
    }
}
