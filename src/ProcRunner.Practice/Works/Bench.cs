using ProcRunner.Lessons;
using ProcRunner.Practice.Chances;
using ProcRunner.Practice.Heads;
using ProcRunner.Procedures;

namespace ProcRunner.Practice.Works;

/// <summary>A practice head on the machine: what work is done on it, with which tools, under which chance.</summary>
internal sealed class Bench(PracticeHead head, HeadSpec spec, PracticeSetup setup, ulong key)
{
    private readonly Dictionary<(string, int), int> _times = [];

    public PracticeHead Head => head;

    public HeadSpec Spec => spec;

    public Tooling Tools { get; } = new(setup.Tools);

    public Spindle Spindle { get; } =
        new(
            setup.Readout,
            new Tooling(setup.Tools),
            new Chance(SplitMix.Inside(key, "spindle")),
            new Chance(SplitMix.Inside(key, "stops"))
        );

    /// <summary>The deck's highest spot when the cutter was set to it.</summary>
    public double DeckTouched { get; set; }

    /// <summary>How the deck's set-up leans.</summary>
    public (double Along, double Across) Lean { get; set; }

    /// <summary>What the boring bar was set to at each position.</summary>
    public double[] BarSetTo { get; } = new double[head.Positions];

    /// <summary>What the readout was at when the tool last touched.</summary>
    public double Touched { get; set; }

    /// <summary>The stream of one piece of work; the next time it is done it has another.</summary>
    public Chance ChanceOf(string work, int position)
    {
        int times = _times[(work, position)] = _times.GetValueOrDefault((work, position)) + 1;
        return new Chance(SplitMix.Inside(SplitMix.Inside(key, work), ((ulong)(position + 2) << 32) + (ulong)times));
    }

    /// <summary>A new part; nothing where the setup has none of the name.</summary>
    public void Fit(string part, int position, Chance chance)
    {
        if (setup.Parts.TryGetValue(part, out TruthTable? table))
        {
            head.TakePart(table, position, chance);
        }
    }

    /// <summary>Pressing a ring in pinches the guides beside it.</summary>
    public void PinchNeighbours(int position, double interference, double outside, double inside)
    {
        double apart = Tools["axis to axis"];
        foreach (int beside in new[] { position - 1, position + 1 })
        {
            if (apart <= 0 || beside < 0 || beside >= head.Positions)
            {
                continue;
            }

            for (int i = 0; i < Truths.GuideBore.Places.Count; i++)
            {
                double bore = head[Truths.GuideBore, beside, i];
                double change = Geometry.Pinch(interference, outside, inside, bore, apart);
                head[Truths.GuideBore, beside, i] = bore + (i % 2 == 0 ? -change : change);
            }
        }
    }

    public double Mean(HeadDimension of, int position) =>
        Enumerable.Range(0, of.Places.Count).Average(i => head[of, position, i]);
}
