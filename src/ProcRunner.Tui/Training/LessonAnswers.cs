using ProcRunner.Lessons;
using ProcRunner.Runs;

namespace ProcRunner.Tui.Training;

/// <summary>What was answered where in a lesson, as far as a fault that it plants may hang on it.</summary>
/// <param name="plan">What is worked to.</param>
internal sealed class LessonAnswers(Plan plan)
{
    private const int NoStep = -1;
    private readonly HashSet<(At At, string Answer)> _all = [];

    /// <summary>What an event answers where; a change that is reported belongs to its position and to no step.</summary>
    public static IEnumerable<(At At, string Answer)> Of(RunEvent happened)
    {
        switch (happened)
        {
            case RunEvent.FindingNoted e:
                yield return (e.At, e.Finding);
                break;
            case RunEvent.ChoiceMade e:
                yield return (e.At, e.Choice);
                break;
            case RunEvent.WayTaken e:
                yield return (e.At, e.Way);
                break;
            case RunEvent.LeftOut e:
                yield return (e.At, "left out");
                break;
            case RunEvent.CutEnded e:
                yield return (e.At, "in limits");
                break;
            case RunEvent.ChangeReported e:
                yield return (new At(NoStep, e.Position), e.Change);
                break;
            case RunEvent.ReadingTaken { Reading: var reading } e:
                // A cut that isn't at its end yet isn't answered, though its depth may be allowed.
                if (reading.Judgement.Verdict != Verdict.Short)
                {
                    yield return (e.At, reading.Good ? "in limits" : "out of spec");
                }

                if (reading.Value.Value == 0)
                {
                    yield return (e.At, "none");
                }

                break;
            default:
                break;
        }
    }

    /// <summary>Takes over what happened.</summary>
    public void Take(RunEvent happened) => _all.UnionWith(Of(happened));

    /// <summary>Forgets all of it.</summary>
    public void Clear() => _all.Clear();

    /// <summary>True where an answer was given, wherever it was.</summary>
    public bool Hold(string answer) => _all.Any(one => one.Answer == answer);

    /// <summary>True where a fault was answered as it should be.</summary>
    public bool Catch(PlantedFault fault) => _all.Any(one => IsRight(one, fault));

    /// <summary>True for the answer that catches a fault.</summary>
    public bool IsRight((At At, string Answer) one, PlantedFault fault) =>
        IsOf(one, fault) && (one.At.Step == NoStep ? one.Answer == fault.OrChange : one.Answer == fault.Answer);

    /// <summary>True for an answer at a fault's step and position, or a change that is reported at its position.</summary>
    public bool IsOf((At At, string Answer) one, PlantedFault fault) =>
        (one.At.Step == NoStep || plan.Steps[one.At.Step].FullName == fault.Step)
        && (fault.Position is null || plan.PositionName(one.At.Position) == fault.Position);
}
