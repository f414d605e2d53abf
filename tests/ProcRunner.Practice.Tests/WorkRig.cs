using ProcRunner.Lessons;
using ProcRunner.Practice.Chances;
using ProcRunner.Practice.Heads;
using ProcRunner.Practice.Works;
using ProcRunner.Quantities;
using ProcRunner.Shop;

namespace ProcRunner.Practice.Tests;

/// <summary>A practice head of the demo's on a bench whose tools err as a test says and not at all otherwise. In mm, degrees, K.</summary>
internal sealed class WorkRig
{
    private readonly Bench _bench;

    public WorkRig(params (string Name, double Value)[] tools)
        : this(Demo.Setup.Parts, tools) { }

    public WorkRig(IReadOnlyDictionary<string, TruthTable> parts, params (string Name, double Value)[] tools) =>
        _bench = new Bench(Head, Demo.Binding.Plan.Head, Demo.Setup with { Tools = Amounts(tools), Parts = parts }, 7);

    public PracticeHead Head { get; } = PracticeHead.Draw(Demo.Binding.Plan.Head, Demo.Setup.Heads, new Chance(21));

    /// <summary>The bench's own spindle.</summary>
    public Spindle BenchSpindle => _bench.Spindle;

    /// <summary>A spindle apart, with a readout in mm.</summary>
    public static Spindle Spindle(Readout readout, params (string Name, double Value)[] tools) =>
        new(readout, new Tooling(Amounts(tools)), new Chance(1), new Chance(2));

    public void Do(string work, int position, double to = 0) => WorkTable.Find(work)!.Do!(_bench, position, to);

    public double Touch(string work, int position) => WorkTable.Find(work)!.Touches!(_bench, position);

    public void Cut(string work, int position, double deep) => WorkTable.Find(work)!.Cuts!(_bench, position, deep);

    public void BeginAnew(string work) => WorkTable.Find(work)!.BeginsAnew!(_bench);

    public void Set(HeadDimension dimension, int position, double value)
    {
        for (int i = 0; i < dimension.Places.Count; i++)
        {
            Head[dimension, position, i] = value;
        }
    }

    public double True(string name, int position = 0, int place = 0) => Head[Truths.Find(name)!, position, place];

    /// <summary>A part with one value.</summary>
    public static IReadOnlyDictionary<string, TruthTable> Part(string part, string name, Quantity value)
    {
        TruthTable table = new();
        table.Values[new TruthKey(name, null)] = new TrueValue([value], null, null, default);
        return new Dictionary<string, TruthTable> { [part] = table };
    }

    // In the base unit of each: mm, degrees, K, or a pure number.
    private static Dictionary<string, Quantity> Amounts((string Name, double Value)[] tools) =>
        tools.ToDictionary(
            t => t.Name,
            t => new Quantity(
                (decimal)t.Value,
                Units.All.First(u => u.Dimension == Tooling.Known[t.Name] && u.Factor == Rational.One)
            )
        );
}
