namespace ProcRunner.Lessons;

/// <summary>A lesson: one practice head with what is planted in it and what is to be learned.</summary>
public sealed record Lesson
{
    /// <summary>Short name.</summary>
    public required string Name { get; init; }

    /// <summary>In words.</summary>
    public required string Title { get; init; }

    /// <summary>Name of the practice setup it builds on.</summary>
    public required string Practice { get; init; }

    /// <summary>Name of the head spec that takes the place of the setup's: a shorter head; null: the setup's.</summary>
    public required string? HeadSpec { get; init; }

    /// <summary>What the chance in it starts from: the same seed gives the same lesson.</summary>
    public required int Seed { get; init; }

    /// <summary>What is to be learned.</summary>
    public required string Learn { get; init; }

    /// <summary>How long its own solution takes, in minutes; null: nobody has said.</summary>
    public int? Minutes { get; init; }

    /// <summary>Full name of the step at which the learner takes over; what goes before is worked by the model operator. Null: from the start.</summary>
    public required string? From { get; init; }

    /// <summary>The position at which both of these count; null: the first that comes, and every one.</summary>
    public required string? At { get; init; }

    /// <summary>Full name of the step that ends the lesson, once it is answered wherever it is asked.</summary>
    public required string Until { get; init; }

    /// <summary>A way on, from whatever step, which ends the lesson as well, since it leads back through work that isn't learned here; null: none.</summary>
    public required string? UntilWay { get; init; }

    /// <summary>True values of this head over those of the setup.</summary>
    public required TruthTable Heads { get; init; }

    /// <summary>True values of the head that change as the learner takes over: what the work before would have put right.</summary>
    public required TruthTable Then { get; init; }

    /// <summary>True values of new parts over those of the setup.</summary>
    public required IReadOnlyDictionary<string, TruthTable> Parts { get; init; }

    /// <summary>Gauges that behave otherwise in this lesson.</summary>
    public required IReadOnlyList<GaugeCharacter> Gauges { get; init; }

    /// <summary>Errors of tools and hands in this lesson.</summary>
    public required IReadOnlyDictionary<string, ProcRunner.Quantities.Quantity> Tools { get; init; }

    /// <summary>What is planted.</summary>
    public required IReadOnlyList<PlantedFault> Planted { get; init; }

    /// <summary>What the learner sees or hears at a step where no gauge shows it, by the step's full name.</summary>
    public required IReadOnlyDictionary<string, string> Told { get; init; }

    /// <summary>Hints on request, by the step's full name.</summary>
    public required IReadOnlyDictionary<string, string> Hints { get; init; }

    /// <summary>A setup as this lesson has it.</summary>
    public PracticeSetup On(PracticeSetup setup) =>
        setup with
        {
            Head = HeadSpec ?? setup.Head,
            Heads = setup.Heads.With(Heads),
            Parts = Parts
                .Keys.Union(setup.Parts.Keys, StringComparer.Ordinal)
                .ToDictionary(
                    part => part,
                    part =>
                        setup
                            .Parts.GetValueOrDefault(part, TruthTable.Empty)
                            .With(Parts.GetValueOrDefault(part, TruthTable.Empty)),
                    StringComparer.Ordinal
                ),
            Tools = setup
                .Tools.Where(t => !Tools.ContainsKey(t.Key))
                .Concat(Tools)
                .ToDictionary(StringComparer.Ordinal),
            Gauges = [.. setup.Gauges.Where(g => Gauges.All(mine => mine.Gauge.Kind != g.Gauge.Kind)), .. Gauges],
        };
}
