using System.Globalization;
using ProcRunner.Procedures;
using ProcRunner.Records.Story;
using ProcRunner.Runs;

namespace ProcRunner.Records.Tests;

/// <summary>The record of a longer head: what the released demo holds of its four cylinders, again and again.</summary>
internal static class ManyValves
{
    private static readonly string[] Kinds = ["I", "E", "IA", "EA", "IB", "EB", "IC", "EC"];

    /// <summary>The record.</summary>
    /// <param name="made">A record of the demo's head.</param>
    /// <param name="cylinders">How many cylinders it has.</param>
    /// <param name="valves">How many valves each of them has.</param>
    public static BuildRecord Of(BuildRecord made, int cylinders, int valves)
    {
        Position[] positions =
        [
            .. Enumerable
                .Range(1, cylinders)
                .SelectMany(c => Kinds.Take(valves).Select(kind => new Position(c, kind, 0m))),
        ];
        Plan plan = new(made.Plan.Procedure, made.Plan.Head with { Positions = positions });
        IEnumerable<T> All<T>(IEnumerable<T> told, Func<T, string> at, Func<T, string, T> moved)
        {
            ILookup<string, T> byPlace = told.ToLookup(at);
            return
            [
                .. byPlace["head"],
                .. plan.Positions.SelectMany(p => byPlace[Pattern(p)].Select(t => moved(t, p.Name))),
            ];
        }

        IReadOnlyList<Said> Said(IReadOnlyList<Said> said) =>
            [.. All(said, s => s.Position, (s, at) => s with { Position = at })];
        return made with
        {
            Plan = plan,
            Values = [.. All(made.Values, v => v.Position, (v, at) => v with { Position = at })],
            Left = [.. All(made.Left, l => l.Position, (l, at) => l with { Position = at })],
            Parts = [.. All(made.Parts, p => p.Position, (p, at) => p with { Position = at })],
            Cuts = [.. All(made.Cuts, c => c.Position, (c, at) => c with { Position = at })],
            Cases = [.. All(made.Cases, c => c.Position, (c, at) => c with { Position = at })],
            Earlier = [.. All(made.Earlier, e => e.Position, (e, at) => e with { Position = at })],
            Findings = Said(made.Findings),
            Decisions = Said(made.Decisions),
            LeftOut = Said(made.LeftOut),
        };
    }

    // 7E and 3EB are made from 3E.
    private static string Pattern(Position position) =>
        string.Create(CultureInfo.InvariantCulture, $"{((position.Cylinder - 1) % 4) + 1}{position.Kind[0]}");
}
