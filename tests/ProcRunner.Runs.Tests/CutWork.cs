using ProcRunner.Shop;

namespace ProcRunner.Runs.Tests;

/// <summary>A zero and a cut of some depth reading, in some unit, at some lean of the guide.</summary>
internal static class CutWork
{
    public const string Limit = "{low: 0.046, aim: 0.052, high: 0.058, origin: maker}";

    /// <summary>Zeroed on a reading, cut with an allowance of 0.005 in, the two to agree within 0.001 in.</summary>
    public static Rig Make(
        Readout? readout = null,
        string limit = Limit,
        string name = "recession",
        string unit = "in",
        string angle = "0 deg",
        string allowance = "0.005 in",
        string agreement = "agree-within: \"'0.001 in'\"",
        string cutMore = "",
        string rest = ""
    ) =>
        new(
            Work.Procedure(
                $"{name}: {{of: position, measured-in: length, gauge: depth, rests-on: [deck, guide, seat, valve], why: it matters}}",
                $$"""
                - zero: seat
                  from: {{name}}
                  rests-on: [set-up]
                  window: {high: "[spec.{{name}}.high]", origin: maker}
                - cut: {{name}}
                  named: cut
                  stop-short: "'{{allowance}}'"
                  {{agreement}}
                  moves: [seat]
                  {{cutMore}}
                - inspect: contact
                  rests-on: [seat]
                  findings: {middle: good, edge: out}
                """
            ),
            Work.Head($"{name}: {limit}", unit, angle, rest),
            RigShop.State with
            {
                Readout = readout ?? RigShop.Readout,
            }
        );

    /// <summary>Touches off at a depth and sets the readout as asked.</summary>
    public static void Zero(this Rig rig, string position, string measured)
    {
        rig.Enter($"seat {position}", measured);
        rig.Enter($"seat {position}", rig.Prompt($"seat {position}").NumberToSet.ToString()!);
    }

    /// <summary>Cuts to the number asked.</summary>
    public static void Pass(this Rig rig, string position) =>
        rig.Enter($"cut {position}", rig.Prompt($"cut {position}").Target!.Show.ToString());
}
