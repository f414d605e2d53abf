namespace ProcRunner.Runs.Tests;

/// <summary>
/// A small but complete procedure with its head, both invented: all eight kinds of step, conditions, an as-found stage,
/// a planned skim that is signed before the seats are cut and taken after, sign-offs of every stage.
/// </summary>
internal static class SmallWork
{
    public const string Head = """
        head: small
        title: one cylinder (invented)
        revision: 1
        material: grey iron
        unit: in
        positions: {cylinders: 1, kinds: [I, E], guide-angle: 0 deg}
        features: {overhead cam: no}
        limits:
          thickness: {low: 3.915, origin: maker}
          recession: {low: 0.046, aim: 0.052, high: 0.058, origin: maker}
          stem clearance: {low: 0.0015, aim: 0.0022, high: 0.0050, origin: maker}
          runout: {high: 0.002, origin: shop}
          stem height: {ask: the maker's figure isn't known}
        forbidden:
          lapping: the seats are finished by the cutter
        """;

    public const string Procedure = """
        procedure: small
        title: a small but complete procedure (invented)
        revision: 1
        settings:
          allowance: {is: 0.005 in, origin: shop}
          agreement: {is: 0.001 in, origin: shop}
        asks-of-the-head:
          features: [overhead cam]
        datums:
          deck: {of: head, is: the face that meets the block}
          set-up: {of: head, is: how it all stands}
          guide: {of: position, is: the axis of the guide}
          seat: {of: position, is: the cone}
          valve: {of: position, is: the valve meant for this place}
        changes:
          cutter edge: {moves: [set-up], why: another edge cuts at another height}
          valves swapped: {moves: [valve everywhere], why: another valve sits elsewhere}
          head dropped: {moves: [deck, guide everywhere], why: everything may have moved}
        readings:
          thickness: {of: head, measured-in: length, gauge: micrometer, rests-on: [deck], why: too thin cracks}
          planned skim: {of: head, measured-in: length, why: seats are cut deeper by it}
          skim taken: {of: head, measured-in: length, gauge: indicator, why: it shifts every depth}
          guide bore: {of: position, measured-in: length, places: [top, bottom], gauge: bore, rests-on: [guide], wears: larger, why: loose guides rock}
          stem: {of: position, measured-in: length, gauge: micrometer, rests-on: [valve], wears: smaller, why: half the clearance}
          recession: {of: position, measured-in: length, places: [front, rear], takes: deepest, gauge: depth, rests-on: [deck, guide, seat, valve], why: compression}
          runout: {of: position, measured-in: length, gauge: indicator, rests-on: [guide, seat], why: bends the valve}
          stem height: {of: position, measured-in: length, gauge: caliper, rests-on: [guide, seat, valve], why: the rocker}
        stages:
        - stage: teardown
          walk: by step
          as-found: yes
          steps:
          - measure: thickness
            works-out:
              cut allowed: {is: "[thickness] - [spec.thickness.low]", window: {low: "'0 in'", origin: maker}}
            ways-on: [measure again, concession, scrap]
          - measure: recession
            window: none
          - measure: stem
            window: none
          - decide: guide
            choices: [keep, replace]
          - sign: measured
        - stage: guides
          walk: by step
          steps:
          - fit: new guide
            only-where: "[decided.guide] = 'replace'"
            moves: [guide]
          - do: size the guide
            only-where: "[decided.guide] = 'replace'"
            moves: [guide]
          - measure: guide bore
            window: none
            works-out:
              clearance: {is: "[guide bore.largest] - [stem]", window: stem clearance}
            ways-on:
            - measure again
            - size again: {back-to: size the guide, decides: {guide: replace}}
            - another guide: {replaces: guide, back-to: new guide, decides: {guide: replace}, moves: [guide]}
            - concession
            - scrap
          - inspect: crack test
            rests-on: [guide]
            findings: {sound: good, cracked: out}
            ways-on: [inspect again, concession, scrap]
          - sign: measured
        - stage: seat cut
          walk: by kind
          steps:
          - measure: planned skim
            window: {low: "'0 in'", high: "max('0 in', [as found.cut allowed])", origin: maker}
          - sign: approved
            signed-by: lead
          - zero: seat
            from: recession
            rests-on: [set-up]
            window: {high: "[spec.recession.high]", origin: maker}
            shift: "[planned skim] - else([skim taken], '0 in')"
            ways-on:
            - measure again
            - another skim: {back-to: planned skim}
            - concession
            - scrap
          - cut: recession
            shift: "[planned skim] - else([skim taken], '0 in')"
            stop-short: "[setting.allowance]"
            agree-within: "[setting.agreement]"
            moves: [seat]
            works-out:
              off its kind: {is: "abs([recession] - else([all.recession.median], [recession]))", window: none}
            ways-on:
            - measure again
            - cut again: {back-to: recession}
            - new insert: {replaces: insert, back-to: seat, moves: [seat]}
            - another skim: {back-to: planned skim}
            - concession
            - scrap
          - measure: runout
            retest-first: clean, turn the pilot, measure again
            ways-on:
            - measure again
            - cut true: {back-to: seat}
            - concession
            - scrap
          - do: lap the seat
            is-work: lapping
            may-be-left-out: yes
            moves: [seat]
          - do: narrow the seat
            may-be-left-out: yes
          - measure: stem height
            ways-on: [measure again, concession, scrap]
          - sign: measured
        - stage: surface
          walk: by step
          steps:
          - do: skim the deck
            for: head
            only-where: "[planned skim] > '0 in'"
            moves: [deck]
          - measure: skim taken
            window: {low: "[planned skim] - '0.001 in'", aim: "[planned skim]", high: "[planned skim] + '0.001 in'", origin: shop}
            ways-on:
            - measure again
            - skim again: {back-to: skim the deck}
            - another skim: {back-to: seat cut / planned skim}
            - concession
            - scrap
          - measure: thickness
            named: thickness after
          - measure: recession
            named: recession after
            works-out:
              off its kind: {is: "abs([recession] - else([all.recession.median], [recession]))", window: none}
            ways-on:
            - measure again
            - new insert: {replaces: insert, back-to: seat cut / seat, moves: [seat]}
            - concession
            - scrap
          - sign: checked
          - sign: released
            signed-by: lead
        """;
}
