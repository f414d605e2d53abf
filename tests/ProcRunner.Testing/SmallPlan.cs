using System.Collections.Frozen;
using ProcRunner.Formulas;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Runs;

namespace ProcRunner.Testing;

/// <summary>A procedure with a step of each kind, on a head of four valves. Invented; it is no way to rebuild a head.</summary>
public static class SmallPlan
{
    private static readonly string[] Stages = ["teardown", "guide replacement", "seat cut", "assemble"];

    /// <summary>The two joined.</summary>
    public static Plan Joined { get; } = new(Procedure(), Head());

    /// <summary>A step by its full name, at a position by its name or on the head.</summary>
    /// <exception cref="ArgumentException">There is no such step or position.</exception>
    public static At At(string step, string position = "head") =>
        new(Joined.TryStep(step, out int index) ? index : throw None(step, nameof(step)), Position(position));

    /// <summary>The index of a position by its name, or of the head.</summary>
    /// <exception cref="ArgumentException">There is no such position.</exception>
    public static int Position(string name) =>
        name == "head" ? Runs.At.Head
        : Joined.TryPosition(name, out int index) ? index
        : throw None(name, nameof(name));

    private static ArgumentException None(string what, string parameter) => new($"There is no {what}.", parameter);

    private static HeadSpec Head() =>
        new()
        {
            Name = "small",
            Title = "head of two cylinders (invented)",
            Revision = 1,
            Material = "grey iron",
            LengthUnit = Units.Inch,
            Positions = [new(1, "I", 0), new(1, "E", 0), new(2, "I", 0), new(2, "E", 0)],
            Limits = FrozenDictionary<SpecKey, Limit>.Empty,
            Figures = FrozenDictionary<SpecKey, Figure>.Empty,
            Features = FrozenDictionary<string, bool>.Empty,
            Forbidden = FrozenDictionary<string, string>.Empty,
        };

    private static Procedure Procedure()
    {
        Step[] steps = Steps();
        return new()
        {
            Name = "small",
            Title = "a step of each kind (invented)",
            Revision = 1,
            Characteristics =
            [
                Characteristic("guide bore") with
                {
                    Places = ["top", "bottom"],
                },
                Characteristic("clearance") with
                {
                    WorkedOut = true,
                },
                Characteristic("recession") with
                {
                    RestsOn = ["deck"],
                },
            ],
            Datums = [new("deck", OfHead: true, "the machined face")],
            Changes = [new("cutter edge", [], "another edge cuts at another height")],
            Settings = FrozenDictionary<string, Setting>.Empty,
            Figures = FrozenDictionary<string, Dimension>.Empty,
            Features = FrozenSet<string>.Empty,
            Stages = [.. Stages.Select((name, index) => StageOf(name, index, steps))],
            Steps = steps,
        };
    }

    private static Step[] Steps()
    {
        Taking recession = Taking("recession");
        (string Stage, string Name, bool OfHead, StepWork Work)[] rows =
        [
            ("teardown", "cracks", false, new StepWork.Inspect([new("none", true), new("between the seats", false)])),
            ("teardown", "guide", false, new StepWork.Decide("guide", ["keep", "replace"])),
            ("teardown", "measured", true, new StepWork.Sign("measured", ByLead: false)),
            ("guide replacement", "chill the guide", false, new StepWork.Do()),
            ("guide replacement", "guide fitted", false, new StepWork.Fit("guide")),
            ("guide replacement", "guide bore", false, new StepWork.Measure(Taking("guide bore", "top", "bottom"))),
            ("seat cut", "seat", false, new StepWork.Zero(recession)),
            ("seat cut", "recession", false, new StepWork.Cut(recession, ZeroStep: 6, Length("'0.005 in'"), null)),
            ("seat cut", "measured", true, new StepWork.Sign("measured", ByLead: false)),
            ("assemble", "released", true, new StepWork.Sign("released", ByLead: true)),
        ];
        return
        [
            .. rows.Select(
                (row, index) =>
                    new Step
                    {
                        Index = index,
                        StageIndex = Array.IndexOf(Stages, row.Stage),
                        Name = row.Name,
                        FullName = $"{row.Stage} / {row.Name}",
                        Subject = row.Name,
                        Work = row.Work,
                        OfHead = row.OfHead,
                        MayBeLeftOut = row.Name == "chill the guide",
                    }
            ),
        ];
    }

    private static Stage StageOf(string name, int index, Step[] steps) =>
        new(
            index,
            name,
            Walk.ByPosition,
            AsFound: index == 0,
            [],
            Array.FindIndex(steps, step => step.StageIndex == index),
            steps.Count(step => step.StageIndex == index)
        );

    private static Characteristic Characteristic(string name) =>
        new()
        {
            Name = name,
            OfHead = false,
            Dimension = Dimension.OfLength,
            MeasuredIn = null,
        };

    private static Taking Taking(string characteristic, params string[] places) =>
        new()
        {
            Characteristic = characteristic,
            Places = places,
            Window = new Window.None(),
        };

    private static Formula Length(string text) =>
        ((FormulaResult.Compiled)FormulaCompiler.Compile(text, new NoNames(), wanted: null)).Formula;

    private sealed class NoNames : IFormulaNames
    {
        public IEnumerable<string> Known => [];

        public FormulaType? TypeOf(string name) => null;
    }
}
