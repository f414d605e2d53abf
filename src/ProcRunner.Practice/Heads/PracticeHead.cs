using ProcRunner.Lessons;
using ProcRunner.Practice.Chances;
using ProcRunner.Procedures;
using ProcRunner.Quantities;

namespace ProcRunner.Practice.Heads;

/// <summary>
/// The true state of one head, which work changes and gauges read. Nothing here is known to the run: it sees readings only.
/// Not thread-safe.
/// </summary>
public sealed class PracticeHead
{
    private readonly double[] _given;
    private readonly Dictionary<(string Name, int Position), string> _conditions = [];
    private readonly HeadSpec _spec;

    private PracticeHead(HeadSpec spec, double[] given) => (_spec, _given, Deck) = (spec, given, null!);

    /// <summary>How many positions it has.</summary>
    public int Positions => _spec.Positions.Count;

    internal DeckForm Deck { get; private set; }

    /// <summary>A true value, in base units (mm, degrees).</summary>
    /// <param name="dimension">What.</param>
    /// <param name="position">Index of the position; of no meaning for a dimension of the head.</param>
    /// <param name="place">Index of the place.</param>
    public double this[HeadDimension dimension, int position, int place = 0]
    {
        get =>
            dimension.Worked is { } worked ? worked(this, position, place) : _given[Slot(dimension, position, place)];
        internal set => _given[Slot(dimension, position, place)] = value;
    }

    /// <summary>A head as it comes in.</summary>
    /// <param name="spec">The head spec: its positions.</param>
    /// <param name="table">What it is like.</param>
    /// <param name="chance">Draws by how much it differs.</param>
    public static PracticeHead Draw(HeadSpec spec, TruthTable table, Chance chance)
    {
        PracticeHead head = new(spec, new double[Layout.Size(spec.Positions.Count)]);
        foreach (HeadDimension dimension in Truths.All.Where(d => d.IsGiven))
        {
            if (dimension.OfHead)
            {
                head.Take(dimension, at: 0, Find(table, dimension.Name, null), chance);
                continue;
            }

            for (int i = 0; i < spec.Positions.Count; i++)
            {
                head.Take(dimension, i, Find(table, dimension.Name, spec.Positions[i]), chance);
            }
        }

        head.TakeConditions(table, chance);
        head.Deck = new DeckForm(
            head[Truths.CastingHeight, 0],
            head[Truths.TiltAlong, 0],
            head[Truths.TiltAcross, 0],
            head[Truths.BowAlong, 0],
            head[Truths.BowAcross, 0],
            head[Truths.Twist, 0],
            head[Truths.PitAsFound, 0]
        );
        return head;
    }

    /// <summary>A true value as a quantity, rounded to a millionth of the unit.</summary>
    public Quantity Value(HeadDimension dimension, int position, int place, Unit unit) =>
        new(ToUnit(this[dimension, position, place], unit), unit);

    /// <summary>The guide's lean from square to the deck, degrees.</summary>
    public double GuideAngle(int position) => (double)_spec.Positions[position].GuideAngle;

    /// <summary>How high the deck stands at a position over the plane that stays with the casting, mm.</summary>
    public double DeckHeightAt(int position)
    {
        int last = Math.Max(1, _spec.Positions[^1].Cylinder - 1);
        double along = (_spec.Positions[position].Cylinder - 1) / (double)last;
        return Deck.HeightAt(along, 0.5);
    }

    /// <summary>A condition in a word; "sound" when nothing else is said. Position -1 for the head.</summary>
    /// <remarks>
    /// <c>contact</c> is where the seat's band lies on the valve's face: middle, outside the middle, inside the middle, at an
    /// edge; <c>deck surface</c> is old until no old surface and no pit is left.
    /// </remarks>
    public string Condition(string name, int position) =>
        name switch
        {
            "contact" => Contact(position),
            "deck surface" => Deck.HasOldSurface || Deck.Pit > 0 ? "old" : "sound",
            _ => _conditions.GetValueOrDefault((name, position), "sound"),
        };

    internal void SetCondition(string name, int position, string word) => _conditions[(name, position)] = word;

    /// <summary>A new part takes the place of an old one at a position.</summary>
    internal void TakePart(TruthTable part, int position, Chance chance)
    {
        Position at = _spec.Positions[position];
        foreach (string name in part.Values.Keys.Select(k => k.Name).Distinct(StringComparer.Ordinal))
        {
            if (Truths.Find(name) is { IsGiven: true } dimension)
            {
                Take(dimension, position, Find(part, name, at), chance);
            }
        }

        foreach ((TruthKey key, TrueCondition condition) in part.Conditions)
        {
            if (key.Where is null || key.Where == at.Kind || key.Where == at.Name)
            {
                SetCondition(key.Name, position, chance.Happens(condition.Share) ? condition.Word : "sound");
            }
        }
    }

    // Thirds and edges of the face as blue shows them; common practice, no source.
    private string Contact(int position)
    {
        double outside = this[Truths.FaceOutside, position];
        double inside = this[Truths.FaceInside, position];
        double half = (outside - inside) / 2;
        double from = this[Truths.SeatOutside, position] + this[Truths.SeatInside, position] - outside - inside;
        double at = half > 0 ? from / 2 / half : 0;
        bool over = this[Truths.SeatOutside, position] > outside || this[Truths.SeatInside, position] < inside;
        return over || Math.Abs(at) > 0.6 ? "at an edge"
            : at > 0.15 ? "outside the middle"
            : at < -0.15 ? "inside the middle"
            : "middle";
    }

    private static decimal ToUnit(double value, Unit unit) =>
        DoubleRounding.TryToDecimal(
            (value - unit.Offset.ToDouble()) / unit.Factor.ToDouble(),
            6,
            Rounding.Nearest,
            out decimal rounded
        )
            ? rounded
            : 0;

    /// <summary>An amount in base units as a double.</summary>
    internal static double InBase(Quantity quantity) => Exact.Of(quantity).Value.ToDouble();

    private static TrueValue? Find(TruthTable table, string name, Position? at) =>
        (at is null ? null : table.Values.GetValueOrDefault(new TruthKey(name, at.Name)))
        ?? (at is null ? null : table.Values.GetValueOrDefault(new TruthKey(name, at.Kind)))
        ?? table.Values.GetValueOrDefault(new TruthKey(name, null));

    private void Take(HeadDimension dimension, int at, TrueValue? value, Chance chance)
    {
        if (value is null)
        {
            return;
        }

        double all = value.Varies is { } varies ? InBase(varies) * chance.Normal() : 0;
        double each = value.EachVaries is { } differs ? InBase(differs) : 0;
        for (int i = 0; i < dimension.Places.Count; i++)
        {
            double own = each > 0 ? each * chance.Normal() : 0;
            this[dimension, at, i] = InBase(value.Is[Math.Min(i, value.Is.Count - 1)]) + all + own;
        }
    }

    private void TakeConditions(TruthTable table, Chance chance)
    {
        foreach ((TruthKey key, TrueCondition condition) in table.Conditions.OrderBy(c => c.Key.Where?.Length ?? 0))
        {
            string Drawn() => chance.Happens(condition.Share) ? condition.Word : "sound";
            if (key.Where is null)
            {
                SetCondition(key.Name, -1, Drawn());
            }

            for (int i = 0; i < Positions; i++)
            {
                Position at = _spec.Positions[i];
                if (key.Where is null || key.Where == at.Kind || key.Where == at.Name)
                {
                    SetCondition(key.Name, i, Drawn());
                }
            }
        }
    }

    private static int Slot(HeadDimension dimension, int position, int place) =>
        Layout.Of(dimension, dimension.OfHead ? 0 : position, place);

    // Given dimensions one after the other: those of the head once, the others once for each position.
    private static class Layout
    {
        private static readonly int HeadSize = Lay(ofHead: true);
        private static readonly int PositionSize = Lay(ofHead: false);

        public static int Size(int positions) => HeadSize + (PositionSize * positions);

        public static int Of(HeadDimension dimension, int position, int place) =>
            dimension.Offset + place + (dimension.OfHead ? 0 : HeadSize + (position * PositionSize));

        private static int Lay(bool ofHead)
        {
            int offset = 0;
            foreach (HeadDimension dimension in Truths.All.Where(d => d.IsGiven && d.OfHead == ofHead))
            {
                dimension.Offset = offset;
                offset += dimension.Places.Count;
            }

            return offset;
        }
    }
}
