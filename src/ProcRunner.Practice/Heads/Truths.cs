using System.Collections.Frozen;
using ProcRunner.Quantities;

namespace ProcRunner.Practice.Heads;

/// <summary>Every dimension of a practice head. Lengths in mm, angles in degrees, forces and pressures in base units.</summary>
public static class Truths
{
    internal static readonly string[] Bore =
    [
        "top along",
        "top across",
        "middle along",
        "middle across",
        "bottom along",
        "bottom across",
    ];

    internal static readonly string[] Ends = ["top along", "top across", "bottom along", "bottom across"];
    internal static readonly string[] Round = ["front", "right", "rear", "left"];

    private static readonly string[] One = [""];
    private static readonly string[] Corners = ["front left", "front right", "rear left", "rear right", "middle"];

    private static readonly string[] Lines =
    [
        "along left",
        "along middle",
        "along right",
        "across front",
        "across middle",
        "across rear",
        "diagonal one",
        "diagonal two",
    ];

    private static readonly List<HeadDimension> Table = [];

    // The head.
    internal static readonly HeadDimension HeadTemperature = Head("head temperature", Dimension.OfTemperature);
    internal static readonly HeadDimension RoomTemperature = Head("room temperature", Dimension.OfTemperature);
    internal static readonly HeadDimension HeadExpansion = Head("head expansion", Dimension.OfExpansion);
    internal static readonly HeadDimension LostBefore = Head("head lost before");
    internal static readonly HeadDimension BlockLost = Head("block lost");
    internal static readonly HeadDimension CastingHeight = Head("casting height");
    internal static readonly HeadDimension TiltAlong = Head("deck tilt along");
    internal static readonly HeadDimension TiltAcross = Head("deck tilt across");
    internal static readonly HeadDimension BowAlong = Head("deck bow along");
    internal static readonly HeadDimension BowAcross = Head("deck bow across");
    internal static readonly HeadDimension Twist = Head("deck twist");
    internal static readonly HeadDimension PitAsFound = Head("pit as found");
    internal static readonly HeadDimension DeckFinish = Head("deck finish");
    internal static readonly HeadDimension Manifold = Head("manifold face flatness", ["intake side", "exhaust side"]);
    internal static readonly HeadDimension CamBores = Head("cam bore straightness");
    internal static readonly HeadDimension OtherHead = Head("other head thickness");
    internal static readonly HeadDimension DeckThickness = Head(
        "deck thickness",
        Corners,
        (h, _, i) => h.Deck.Thickness(i)
    );
    internal static readonly HeadDimension Flatness = Head("flatness", Lines, (h, _, i) => h.Deck.LineRange(i));
    internal static readonly HeadDimension DeckRange = Head("deck range", One, (h, _, _) => h.Deck.Range);
    internal static readonly HeadDimension DeepestPit = Head("deepest pit", One, (h, _, _) => h.Deck.Pit);
    internal static readonly HeadDimension SkimTaken = Head("skim taken", One, (h, _, _) => h.Deck.Taken);

    // The guide.
    internal static readonly HeadDimension GuideHole = At("guide hole", Ends);
    internal static readonly HeadDimension GuideOutside = At("guide outside", Ends);
    internal static readonly HeadDimension GuideInside = At("guide inside");
    internal static readonly HeadDimension GuideBore = At("guide bore", Bore);
    internal static readonly HeadDimension StandOut = At("guide stand-out");
    internal static readonly HeadDimension GuideExpansion = At("guide expansion", Dimension.OfExpansion);
    internal static readonly HeadDimension GuideColder = At("guide colder by", Dimension.OfTemperatureDifference);

    // The valve.
    internal static readonly HeadDimension Stem = At("stem", Bore);
    internal static readonly HeadDimension ValveLength = At("valve length");
    internal static readonly HeadDimension TipToRetainer = At("tip to retainer");
    internal static readonly HeadDimension ValveDrop = At("valve drop");
    internal static readonly HeadDimension FaceAngle = At("face angle", Dimension.OfAngle);
    internal static readonly HeadDimension FaceRunout = At("face runout");
    internal static readonly HeadDimension FaceTaken = At("face taken off");
    internal static readonly HeadDimension Margin = At("margin");
    internal static readonly HeadDimension FaceOutside = At("face outside");
    internal static readonly HeadDimension FaceInside = At("face inside");

    // The seat and its insert.
    internal static readonly HeadDimension SeatAngle = At("seat angle", Dimension.OfAngle);
    internal static readonly HeadDimension SeatDepth = At("seat depth");
    internal static readonly HeadDimension AroundValve = At("around the valve", Round);
    internal static readonly HeadDimension SeatOutside = At("seat outside");
    internal static readonly HeadDimension SeatInside = At("seat inside");
    internal static readonly HeadDimension OffAlong = At("seat off along");
    internal static readonly HeadDimension OffAcross = At("seat off across");
    internal static readonly HeadDimension InsertOutside = At("insert outside", ["one way", "across"]);
    internal static readonly HeadDimension InsertHeight = At("insert height", ["one side", "other side"]);
    internal static readonly HeadDimension InsertInside = At("insert inside");
    internal static readonly HeadDimension InsertExpansion = At("insert expansion", Dimension.OfExpansion);
    internal static readonly HeadDimension InsertColder = At("insert colder by", Dimension.OfTemperatureDifference);
    internal static readonly HeadDimension CounterboreBore = At("counterbore bore", Ends);
    internal static readonly HeadDimension CounterboreDepth = At("counterbore depth", Round);
    internal static readonly HeadDimension InsertGap = At("insert gap", Round);
    internal static readonly HeadDimension FreshDepth = At("fresh seat depth");
    internal static readonly HeadDimension FreshOutside = At("fresh seat outside");
    internal static readonly HeadDimension FreshInside = At("fresh seat inside");
    internal static readonly HeadDimension PilotBend = At("pilot bend");
    internal static readonly HeadDimension PilotLean = At("pilot lean");

    // Heights, springs and the rest.
    internal static readonly HeadDimension SpringPocket = At("spring pocket");
    internal static readonly HeadDimension SealTop = At("seal top");
    internal static readonly HeadDimension ShimStack = At("shim stack");
    internal static readonly HeadDimension FreeLength = At("spring free length");
    internal static readonly HeadDimension Squareness = At("spring squareness");
    internal static readonly HeadDimension LoadClosed = At("spring load closed", Dimension.OfForce);
    internal static readonly HeadDimension LoadOpen = At("spring load open", Dimension.OfForce);
    internal static readonly HeadDimension TestClosed = At("spring test closed");
    internal static readonly HeadDimension TestOpen = At("spring test open");
    internal static readonly HeadDimension SolidHeight = At("spring solid height");
    internal static readonly HeadDimension Lift = At("valve lift");
    internal static readonly HeadDimension Pump = At("pump vacuum", Units.Find("inHg")!.Dimension);
    internal static readonly HeadDimension Leak = At("leak", Units.Find("inHg")!.Dimension);
    internal static readonly HeadDimension Dirt = At("dirt", Units.Find("inHg")!.Dimension);
    internal static readonly HeadDimension DirtHeight = At("dirt height");
    internal static readonly HeadDimension ChamberStand = At("pre-chamber stand", ["front", "rear"]);
    internal static readonly HeadDimension InjectorStand = At("injector stand");
    internal static readonly HeadDimension CamOverPocket = At("cam over pocket");
    internal static readonly HeadDimension CamShim = At("cam shim");
    internal static readonly HeadDimension ReliefReach = At("relief reach");
    internal static readonly HeadDimension ReliefLand = At("relief land");

    private static readonly FrozenDictionary<string, HeadDimension> ByName = Named();

    /// <summary>All, in order.</summary>
    public static IReadOnlyList<HeadDimension> All => Table;

    /// <summary>The dimension of a name, or null.</summary>
    public static HeadDimension? Find(string name) => ByName.GetValueOrDefault(name);

    private static FrozenDictionary<string, HeadDimension> Named()
    {
        Table.AddRange(WorkedTruths.All);
        return Table.ToFrozenDictionary(d => d.Name, StringComparer.Ordinal);
    }

    private static HeadDimension Head(string name, Dimension? kind = null) => Add(name, true, kind, One, null);

    private static HeadDimension Head(
        string name,
        string[] places,
        Func<PracticeHead, int, int, double>? worked = null
    ) => Add(name, true, null, places, worked);

    private static HeadDimension At(string name, params string[] places) =>
        Add(name, false, null, places.Length == 0 ? One : places, null);

    private static HeadDimension At(string name, Dimension kind) => Add(name, false, kind, One, null);

    private static HeadDimension Add(
        string name,
        bool ofHead,
        Dimension? kind,
        IReadOnlyList<string> places,
        Func<PracticeHead, int, int, double>? worked
    )
    {
        HeadDimension dimension = new(name, ofHead, kind ?? Dimension.OfLength, places, worked);
        Table.Add(dimension);
        return dimension;
    }
}
