using System.Text;
using ProcRunner.Problems;
using ProcRunner.Procedures;

namespace ProcRunner.Yaml.Tests;

/// <summary>A small head spec and procedure without problems, invented, which tests spoil in one place.</summary>
internal static class Samples
{
    public const string Head = """
        head: small-two
        title: two-cylinder head (invented)
        revision: 1
        material: grey iron
        unit: in
        positions:
          cylinders: 2
          kinds: [I, E]
          guide-angle: 0 deg
        features: {pre-chambers: yes}
        figures:
          valve lift: {is: 0.310, origin: maker}
        limits:
          deck thickness: {low: 3.915, aim: 3.940, high: 3.945, origin: maker}
          stem clearance: {low: 0.0015, high: 0.0030, also: {low: 0.038 mm, high: 0.076 mm}, origin: maker, worn: {high: 0.0045}}
          I:
            recession: {low: 0.049, aim: 0.055, high: 0.061, origin: maker}
          E:
            recession: {low: 0.052, aim: 0.058, high: 0.064, origin: maker}
        fits:
          guide in head: {outside: {low: 0.6265, high: 0.6270}, hole: {low: 0.6245, high: 0.6250}, origin: maker}
        forbidden:
          lapping: the seats are finished by the cutter

        """;

    public const string Procedure = """
        procedure: small
        title: a short job (invented)
        revision: 1
        settings:
          allowance: {is: 0.005 in, origin: shop}
        asks-of-the-head:
          figures: {valve lift: length}
          features: [pre-chambers]
        datums:
          deck: {of: head, is: the machined face}
          seat: {of: position, is: the cone cut for the valve}
        changes:
          cutter edge: {moves: [seat everywhere], why: another edge cuts at another height}
        readings:
          deck thickness: {of: head, measured-in: length, rests-on: [deck]}
          stem: {of: position, measured-in: length, places: [top, bottom]}
          bore: {of: position, measured-in: length, places: [top, bottom], takes: smallest}
          recession: {of: position, measured-in: length, takes: deepest, rests-on: [deck, seat]}
        stages:
        - stage: teardown
          as-found: yes
          steps:
          - measure: deck thickness
          - measure: stem
            window: none
          - decide: valve
            choices: [keep, replace]
          - sign: measured
        - stage: seats
          walk: by kind
          cautions:
          - warning: rotating cutter
          steps:
          - do: clean the seat
            only-where: "[decided.valve] = 'keep'"
            is-work: lapping
          - measure: bore
            window: none
            works-out:
              clearance: {is: "[bore] - [stem.largest]", window: stem clearance}
          - zero: seat
          - cut: recession
            stop-short: "[setting.allowance]"
            moves: [seat]
            ways-on:
            - measure again
            - cut again: {back-to: seat}
            - scrap
          - inspect: cracks
            findings: {none: good, cracked: out}
          - sign: released
            signed-by: lead

        """;

    public static Loaded<HeadSpec> LoadHead(string text) =>
        HeadSpecFile.Load("head.yaml", Encoding.UTF8.GetBytes(text));

    public static Loaded<Procedure> LoadProcedure(string text) =>
        ProcedureFile.Load("procedure.yaml", Encoding.UTF8.GetBytes(text));

    /// <summary>Where a piece of a text begins, counted as editors count.</summary>
    public static Place PlaceOf(string file, string text, string piece)
    {
        int at = text.IndexOf(piece, StringComparison.Ordinal);
        Assert.True(at >= 0, $"'{piece}' isn't in the text");
        int line = 1 + text.AsSpan(0, at).Count('\n');
        return new Place(file, line, at - text.AsSpan(0, at).LastIndexOf('\n'));
    }
}
