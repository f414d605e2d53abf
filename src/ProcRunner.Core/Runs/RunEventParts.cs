using System.Globalization;
using ProcRunner.Quantities;
using ProcRunner.Text;
using ProcRunner.Trail;

namespace ProcRunner.Runs;

/// <summary>The values inside stored events, written and read.</summary>
internal static class RunEventParts
{
    public static Json.Map WriteHeader(JobHeader header) =>
        Json.MapOf(
            ("e", T("job opened")),
            ("stamp", T(header.Stamp)),
            ("procedure", T(header.ProcedureDigest)),
            ("head", T(header.HeadDigest)),
            ("customer", T(header.Customer)),
            ("complaint", T(header.Complaint)),
            ("earlier", T(header.EarlierWork)),
            ("practice", new Json.Flag(header.Practice))
        );

    public static JobHeader ReadHeader(RunEventReader from) =>
        new()
        {
            Stamp = from.Text("stamp"),
            ProcedureDigest = from.Text("procedure"),
            HeadDigest = from.Text("head"),
            Customer = from.Text("customer"),
            Complaint = from.Text("complaint"),
            EarlierWork = from.Text("earlier"),
            Practice = from.Flag("practice"),
        };

    public static Json.Map Write(TakenReading reading) =>
        Json.MapOf(
            ("of", T(reading.Characteristic)),
            ("typed", T(SafeText.Clean(reading.Typed))),
            (
                "places",
                Json.ListOf([
                    .. reading.Places.Select(p =>
                        (Json)Json.MapOf(("place", T(p.Place)), ("value", T(p.Value.ToString())))
                    ),
                ])
            ),
            ("value", T(reading.Value.ToString())),
            ("gauge", T(reading.Gauge)),
            ("judged", Write(reading.Judgement)),
            (
                "worked",
                Json.ListOf([
                    .. reading.Worked.Select(w =>
                        (Json)
                            Json.MapOf(
                                ("of", T(w.Name)),
                                ("value", T(w.Value.ToString())),
                                ("working", T(SafeText.Clean(w.Working))),
                                ("judged", Write(w.Judgement))
                            )
                    ),
                ])
            ),
            ("predicted", Quantity(reading.Predicted)),
            ("disagrees", new Json.Flag(reading.Disagrees))
        );

    public static TakenReading ReadReading(RunEventReader from) =>
        new()
        {
            Characteristic = from.Text("of"),
            Typed = from.Text("typed"),
            Places = [.. from.Each("places").Select(p => new PlaceValue(p.Text("place"), p.Quantity("value")))],
            Value = from.Quantity("value"),
            Gauge = from.Text("gauge"),
            Judgement = ReadJudgement(from.Inner("judged")),
            Worked =
            [
                .. from.Each("worked")
                    .Select(w => new WorkedValue(
                        w.Text("of"),
                        w.Quantity("value"),
                        w.Text("working"),
                        ReadJudgement(w.Inner("judged"))
                    )),
            ],
            Predicted = from.QuantityOrNull("predicted"),
            Disagrees = from.Flag("disagrees"),
        };

    public static Json.Map Write(ZeroPoint zero) =>
        Json.MapOf(("set", T(zero.Set.ToString())), ("measured", T(zero.Measured.ToString())));

    public static ZeroPoint ReadZero(RunEventReader from) => new(from.Quantity("set"), from.Quantity("measured"));

    public static Json.Map Write(CutProgress progress) =>
        Json.MapOf(
            ("zero", Write(progress.Zero)),
            ("readout", T(progress.Readout.ToString())),
            ("travel", T(progress.Travel.ToString())),
            ("travel at reading", T(progress.TravelAtReading.ToString())),
            ("reading", T(progress.Reading.ToString())),
            ("measures", new Json.Flag(progress.Measures))
        );

    public static CutProgress ReadProgress(RunEventReader from) =>
        new(
            ReadZero(from.Inner("zero")),
            from.Quantity("readout"),
            from.Quantity("travel"),
            from.Quantity("travel at reading"),
            from.Quantity("reading"),
            from.Flag("measures")
        );

    public static Json.Map Write(CutTarget target) =>
        Json.MapOf(
            ("show", T(target.Show.ToString())),
            ("short", new Json.Flag(target.StopsShort)),
            ("left", T(target.Left.ToString())),
            ("working", T(target.Working))
        );

    public static CutTarget ReadTarget(RunEventReader from) =>
        new(from.Quantity("show"), from.Flag("short"), from.Quantity("left"), from.Text("working"));

    public static Json Write(Mark? mark) =>
        mark is null
            ? Json.Nothing
            : Json.MapOf(
                ("person", T(mark.Person)),
                ("name", T(mark.Name)),
                ("time", T(mark.At.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ss.fffZ", CultureInfo.InvariantCulture))),
                ("signature", T(mark.Signature))
            );

    public static Json Write(Plan plan, IReadOnlyList<StaleItem> items) =>
        Json.ListOf([
            .. items.Select(item =>
                (Json)(
                    item.Characteristic >= 0
                        ? Json.MapOf(
                            ("of", T(plan.CharacteristicAt(item.Characteristic).Name)),
                            ("at", T(plan.PositionName(item.Position)))
                        )
                        : Json.MapOf(
                            ("step", T(plan.StepAt(item.Step).FullName)),
                            ("at", T(plan.PositionName(item.Position)))
                        )
                )
            ),
        ]);

    public static Json Texts(IReadOnlyList<string> texts) =>
        Json.ListOf([.. texts.Select(t => (Json)T(SafeText.Clean(t)))]);

    public static Json Quantity(Quantity? quantity) => quantity is { } q ? T(q.ToString()) : Json.Nothing;

    private static Json.Map Write(Judgement judgement) =>
        Json.MapOf(
            ("verdict", T(VerdictWord.Of(judgement.Verdict))),
            ("low", Quantity(judgement.Low)),
            ("aim", Quantity(judgement.Aim)),
            ("high", Quantity(judgement.High)),
            ("origin", T(judgement.Origin)),
            ("detail", T(judgement.Detail))
        );

    private static Judgement ReadJudgement(RunEventReader from) =>
        new(
            from.Word("verdict", VerdictWord.Find),
            from.QuantityOrNull("low"),
            from.QuantityOrNull("aim"),
            from.QuantityOrNull("high"),
            from.Text("origin"),
            from.Text("detail")
        );

    private static Json.Text T(string text) => new(text);
}
