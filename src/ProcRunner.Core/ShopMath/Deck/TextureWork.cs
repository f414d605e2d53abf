using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The table of surface texture.</summary>
internal static class TextureWork
{
    private const string Family = "deck";
    private static readonly WorkTakes Height = new WorkTakes.Amount(Units.Micrometre);
    private static readonly WorkTakes Length = new WorkTakes.Amount(Units.Millimetre);
    private static readonly WorkTakes Parameter = new WorkTakes.Word(Texture.Parameters);

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        new()
        {
            Name = "texture-unit",
            Family = Family,
            Summary = "a roughness in the other unit, its parameter named",
            Details = "Only the unit changes. A figure of one parameter can't be turned into another: Ra is no Rz.",
            Parameters = [new("value", Height, "the roughness"), new("parameter", Parameter, "what was measured")],
            Source = "1 uin = 0.0254 um exactly",
            Gives = WorkGives.Of(Dimension.OfLength, [.. Texture.Parameters]),
            NotInFormulas = "a quantity there carries its unit along, so there is nothing to turn",
            Examples =
            [
                .. new[]
                {
                    ("20", "0.508"),
                    ("30", "0.762"),
                    ("47", "1.1938"),
                    ("60", "1.524"),
                    ("75", "1.905"),
                    ("100", "2.54"),
                    ("125", "3.175"),
                    ("130", "3.302"),
                }.Select(pair => new WorkExample(
                    $"value={pair.Item1} uin; parameter=Ra",
                    $"Ra={pair.Item2} \u00B5m",
                    "x 0.0254"
                )),
            ],
            Work = all =>
            {
                bool isMicroinch = all.Entered("value").Unit == Units.Microinch;
                Unit other = isMicroinch ? Units.Micrometre : Units.Microinch;
                Working working = new(all);
                working.Step(
                    all.Word("parameter"),
                    isMicroinch ? "{value} x 0.0254" : "{value} / 0.0254",
                    all.Amount("value"),
                    other,
                    other
                );
                return working.Done();
            },
        },
        new()
        {
            Name = "texture-band",
            Family = Family,
            Summary = "whether a roughness lies in the band a gasket wants",
            Details =
                "For some gaskets too smooth is a fault as well. Reading and band must be of one parameter: another is refused, "
                + "not converted.",
            Parameters =
            [
                new("value", Height, "the roughness measured"),
                new("parameter", Parameter, "what was measured"),
                new("low", Height, "least allowed"),
                new("high", Height, "most allowed"),
                new("band-parameter", Parameter, "what the band is given in"),
            ],
            Source = "limits are inclusive",
            Gives = WorkGives.Words("verdict"),
            Examples =
            [
                new(
                    "value=30 uin; parameter=Ra; low=0.7 um; high=1.2 um; band-parameter=Ra",
                    "verdict=in the band",
                    "30 uin is 0.762 um; the band is published for multi-layer steel gaskets"
                ),
                new(
                    "value=25 uin; parameter=Ra; low=30 uin; high=60 uin; band-parameter=Ra",
                    "verdict=too smooth",
                    "25 is below 30, published as the smooth limit of composition gaskets"
                ),
            ],
            Work = Band,
        },
        new()
        {
            Name = "texture-profile",
            Family = Family,
            Summary = "Ra, Rq, Rz and Rt of a profile's heights",
            Details =
                "Heights at equal steps. With spacing and cut-off waviness is filtered out first, and half a cut-off is dropped at "
                + "each end; without them the heights are taken as filtered. What is left is one evaluation length; Rz is the mean "
                + "over its five sampling lengths and needs ten heights.",
            Parameters =
            [
                new("heights", new WorkTakes.Amounts(Units.Micrometre, 2), "at equal steps"),
                new("spacing", Length, "from one height to the next", IsOptional: true),
                new("cut-off", Length, "of the Gaussian filter", IsOptional: true),
            ],
            Source = "ISO 21920-2, earlier ISO 4287; filter: ISO 16610-21 (from memory)",
            Gives = WorkGives.Of(Dimension.OfLength, "Ra", "Rq", "Rz", "Rt"),
            Examples =
            [
                new(
                    "heights=1 -1 1 -1 um",
                    "Ra=1 \u00B5m; Rq=1 \u00B5m; Rt=2 \u00B5m",
                    "square profile of amplitude A: A, A, 2A"
                ),
                new(
                    "heights=40 -40 40 -40 uin",
                    "Ra=40 \u00B5in; Rt=80 \u00B5in",
                    "square profile of amplitude A: A, 2A"
                ),
                new(
                    "heights=1 -1 2 -2 3 -3 2 -2 1 -1 um",
                    "Rz=3.6 \u00B5m; Rt=6 \u00B5m",
                    "by hand: (2 + 4 + 6 + 4 + 2) / 5"
                ),
                new(
                    "heights=1 -1 1 -1 1 -1 1 -1 1 -1 1 -1 um; spacing=0.1 mm; cut-off=0.5 mm",
                    "Ra=0.973737035 \u00B5m; Rt=1.947534822 \u00B5m",
                    "the filter's weights summed in another language"
                ),
            ],
            Work = Profile,
        },
        new()
        {
            Name = "texture-cut-off",
            Family = Family,
            Summary = "cut-off and evaluation length to measure a roughness with",
            Details = "For surfaces without a regular pattern, by the Ra expected. Five cut-offs are evaluated.",
            Parameters = [new("ra", Height, "Ra expected, over 0.02 um and up to 10 um")],
            Source = "ISO 4288, ISO 21920-3 (from memory)",
            Gives = WorkGives.Of(Dimension.OfLength, "cut-off", "evaluation length"),
            Examples =
            [
                new("ra=1.2 um", "cut-off=0.8 mm; evaluation length=4 mm", "0.1 < Ra <= 2: 0.8 and 4 mm (from memory)"),
                new("ra=2 um", "cut-off=0.8 mm", "the upper end belongs to the band (from memory)"),
                new("ra=100 uin", "cut-off=2.5 mm; evaluation length=12.5 mm", "2 < Ra <= 10 (from memory)"),
                new("ra=0.05 um", "cut-off=0.25 mm; evaluation length=1.25 mm", "0.02 < Ra <= 0.1 (from memory)"),
            ],
            Work = all =>
                Texture
                    .CutOff(all.Amount("ra"))
                    .Then(cutOff =>
                    {
                        Working working = new(all);
                        Exact length = Heights.Scaled(Exact.Of(cutOff), Rational.FromInteger(5));
                        working.Step(
                            "cut-off",
                            "by the band of {ra}",
                            Exact.Of(cutOff),
                            Units.Millimetre,
                            Units.Millimetre
                        );
                        working.Step("evaluation length", "5 x {cut-off}", length, Units.Millimetre, Units.Millimetre);
                        return working.Done();
                    }),
        },
    ];

    private static ShopResult<WorkAnswer> Profile(WorkArguments all)
    {
        if (all.Has("spacing") != all.Has("cut-off"))
        {
            (string given, string missing) = all.Has("spacing") ? ("spacing", "cut-off") : ("cut-off", "spacing");
            return new ShopFault(missing, "nothing", $"the filter needs it beside the {given}");
        }

        double[] heights = [.. all.Amounts("heights").Select(one => one.In(Units.Micrometre).ToDouble())];
        return (
            all.Has("cut-off")
                ? GaussianFilter.Roughness(
                    heights,
                    all.In("spacing", Units.Millimetre),
                    all.In("cut-off", Units.Millimetre)
                )
                : heights
        )
            .Then(Texture.Of)
            .Then(texture =>
            {
                Working working = new(all);
                Add(working, "Ra", "mean of |height - mean|", texture.RaMicrometres);
                Add(working, "Rq", "root of the mean of (height - mean) squared", texture.RqMicrometres);
                if (texture.RzMicrometres is { } rz)
                {
                    Add(working, "Rz", "mean of highest less lowest in each fifth of {heights}", rz);
                }

                Add(working, "Rt", "highest less lowest of {heights}", texture.RtMicrometres);
                return working.Done();
            });
    }

    private static void Add(Working working, string name, string formula, double micrometres) =>
        working.Step(name, formula, micrometres, Units.Micrometre, Units.Microinch);

    private static ShopResult<WorkAnswer> Band(WorkArguments all)
    {
        if (all.Word("parameter") != all.Word("band-parameter"))
        {
            return new ShopFault(
                "parameter",
                all.Word("parameter"),
                $"the band is in {all.Word("band-parameter")}, which is another parameter: measure that"
            );
        }

        if (Allowed.NotAbove("low", all.Amount("low"), "high limit", all.Amount("high")) is { } fault)
        {
            return fault;
        }

        string verdict =
            all.Amount("value").CompareTo(all.Amount("low")) < 0 ? "too smooth"
            : all.Amount("value").CompareTo(all.Amount("high")) > 0 ? "too rough"
            : "in the band";
        Working working = new(all);
        working.Say("verdict", "{value} between {low} and {high}", verdict);
        return working.Done();
    }
}
