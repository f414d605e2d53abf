using ProcRunner.Practice.Chances;
using ProcRunner.Quantities;
using ProcRunner.Shop;

namespace ProcRunner.Practice.Works;

/// <summary>
/// The machine's spindle with its readout: where the tool really is when the readout shows a number. Depths in mm along the
/// spindle. The tool stays behind what is shown by its flex, which grows with the pass, and by what its edge has worn; a
/// spindle that was raised takes up its backlash first.
/// </summary>
/// <param name="readout">The readout.</param>
/// <param name="tools">Errors of tools and hands.</param>
/// <param name="chance">What the metal sees of chance.</param>
/// <param name="stops">Where a model operator stops: a stream of its own, since a learner stops by hand.</param>
internal sealed class Spindle(Readout readout, Tooling tools, Chance chance, Chance stops)
{
    private double _zero;
    private double _set;
    private double _travel;
    private double _depth;
    private readonly Dictionary<string, int> _passes = new(StringComparer.Ordinal);
    private string _tool = "";

    /// <summary>The readout is set to a number with the tool touching a surface.</summary>
    /// <param name="tool">Which tool: each wears by its own passes.</param>
    /// <param name="surface">How deep the surface lies.</param>
    /// <param name="number">The number.</param>
    public void SetAt(string tool, double surface, Quantity number)
    {
        _tool = tool;
        _zero = surface + (tools["touch off"] * chance.Normal());
        _set = (double)number.Value;
        (_travel, _depth) = (0, surface);
    }

    /// <summary>A fresh edge.</summary>
    public void ChangeEdge() => _passes.Remove(_tool);

    /// <summary>What the readout shows when the operator stops at a number: a little before or past it, to the readout's step.</summary>
    public Quantity StopAt(Quantity wanted)
    {
        double sense = readout.GrowsDeeper ? 1 : -1;
        double past = tools["stop"] * stops.Normal() / Factor;
        decimal steps = Math.Round(
            (decimal)(past / (double)readout.Step) * (decimal)sense,
            MidpointRounding.AwayFromZero
        );
        return new Quantity(wanted.Value + (steps * readout.Step), wanted.Unit);
    }

    /// <summary>Cuts until the readout shows a number; how deep the tool came.</summary>
    public double CutTo(Quantity shown)
    {
        double sense = readout.GrowsDeeper ? 1 : -1;
        double doubling = readout.ShowsDiameter ? 2 : 1;
        double travel = ((double)shown.Value - _set) * sense / doubling * Factor;
        travel = readout.StepMode ? _travel + ((double)shown.Value * sense / doubling * Factor) : travel;
        int passes = _passes.GetValueOrDefault(_tool);
        double metal = Math.Max(0, _zero + travel - _depth);
        double behind = (tools["flex"] * metal) + (tools["edge wear"] * passes) + tools["backlash"];
        _passes[_tool] = passes + 1;
        _travel = travel;
        _depth = Math.Max(_depth, _zero + travel - behind + (tools["spindle"] * chance.Normal()));
        return _depth;
    }

    private double Factor => readout.Unit.Factor.ToDouble();
}
