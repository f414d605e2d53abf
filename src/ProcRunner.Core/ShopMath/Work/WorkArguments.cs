using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>What was given to a <see cref="WorkFunction"/>, read and checked against its parameters.</summary>
public sealed class WorkArguments
{
    private readonly Dictionary<string, IReadOnlyList<Quantity>> _amounts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, IReadOnlyList<Exact>> _exact = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _texts = new(StringComparer.Ordinal);

    private static readonly Unit[] InchUnits =
    [
        Units.Inch,
        Units.Thou,
        Units.Microinch,
        Units.PoundForce,
        Units.PoundForcePerInch,
        Units.PoundForceFoot,
        Units.PoundForceInch,
        Units.Psi,
        Units.SquareInch,
        Units.CubicInch,
        Units.FootPerMinute,
        Units.InchPerTurn,
    ];

    private const decimal MostShown = 1_000_000_000_000m;
    private const int ShownPlaces = 12;

    private Unit? _alike;

    private WorkArguments() { }

    /// <summary>The unit of the first argument that takes quantities of whatever kind; a pure number without one.</summary>
    public Unit AlikeUnit => _alike ?? Units.One;

    /// <summary>
    /// Whether results are shown in inch units: the first length given decides, or without one, whether any argument is in
    /// such a unit.
    /// </summary>
    public bool IsInch =>
        _amounts.Values.FirstOrDefault(all => all[0].Dimension == Dimension.OfLength) is { } first
            ? InchUnits.Contains(first[0].Unit)
            : _amounts.Values.Any(all => InchUnits.Contains(all[0].Unit));

    /// <summary>The arguments as they were typed, by parameter name.</summary>
    public IReadOnlyDictionary<string, string> Texts => _texts;

    /// <summary>
    /// Reads names and texts. A fault names the argument that is unknown, missing, given twice, without a unit, of the wrong
    /// kind, or no number.
    /// </summary>
    public static ShopResult<WorkArguments> Read(
        IReadOnlyList<WorkParameter> parameters,
        IReadOnlyList<KeyValuePair<string, string>> given
    )
    {
        WorkArguments read = new();
        foreach ((string name, string text) in given)
        {
            if (parameters.FirstOrDefault(one => one.Name == name) is not { } parameter)
            {
                return new ShopFault(
                    name,
                    text,
                    Meant(parameters, name) + "this function asks for " + Names(parameters)
                );
            }

            if (!read._texts.TryAdd(name, text))
            {
                return new ShopFault(name, $"{read._texts[name]} and {text}", "give it once");
            }

            if (read.Take(parameter, text) is { } fault)
            {
                return fault;
            }
        }

        return parameters.FirstOrDefault(one => !one.IsOptional && !read._texts.ContainsKey(one.Name)) is { } missing
            ? new ShopFault(missing.Name, "nothing", $"give it: {missing.Summary} ({missing.Takes})")
            : read;
    }

    /// <summary>
    /// Takes what a formula gives, whose kinds were proved before: amounts are worked with as they are, and only what shows
    /// them is rounded. A fault names the argument that has too few values.
    /// </summary>
    /// <param name="given">Each parameter with its amounts, or with its word.</param>
    internal static ShopResult<WorkArguments> Of(
        IEnumerable<(WorkParameter Parameter, IReadOnlyList<Exact> Amounts, string Word)> given
    )
    {
        WorkArguments read = new();
        foreach ((WorkParameter parameter, IReadOnlyList<Exact> amounts, string word) in given)
        {
            if (parameter.Takes is WorkTakes.Word)
            {
                read._texts[parameter.Name] = word;
            }
            else if (read.Take(parameter, amounts) is { } fault)
            {
                return fault;
            }
        }

        return read;
    }

    /// <summary>The most places after the point that any argument in a unit was given to; 0 where none is in it.</summary>
    public int PlacesIn(Unit unit) =>
        _amounts
            .Values.SelectMany(all => all)
            .Where(one => one.Unit == unit)
            .Select(one => (int)one.Value.Scale)
            .DefaultIfEmpty(0)
            .Max();

    /// <summary>Whether it was given.</summary>
    public bool Has(string name) => _texts.ContainsKey(name);

    /// <summary>The quantity given for a parameter that is not optional, or is known to be there.</summary>
    public Quantity Entered(string name) => _amounts[name][0];

    /// <summary>The amount given.</summary>
    public Exact Amount(string name) => _exact[name][0];

    /// <summary>All amounts given; none if it was left out.</summary>
    public IReadOnlyList<Exact> Amounts(string name) => _exact.GetValueOrDefault(name) ?? [];

    /// <summary>All quantities given; none if it was left out.</summary>
    public IReadOnlyList<Quantity> Quantities(string name) => _amounts.GetValueOrDefault(name) ?? [];

    /// <summary>The amount given as a double in a unit.</summary>
    public double In(string name, Unit unit) => Amount(name).In(unit).ToDouble();

    /// <summary>As <see cref="In(string, Unit)"/>, or a value that holds where it was left out.</summary>
    public double In(string name, Unit unit, double without) => Has(name) ? In(name, unit) : without;

    /// <summary>The word given; empty if it was left out.</summary>
    public string Word(string name) => _texts.GetValueOrDefault(name) ?? "";

    private ShopFault? Take(WorkParameter parameter, string text)
    {
        if (parameter.Takes is WorkTakes.Word word)
        {
            return word.Choices.Contains(text, StringComparer.Ordinal)
                ? null
                : new ShopFault(parameter.Name, text, "allowed: " + string.Join(", ", word.Choices));
        }

        (Unit usual, int least, int most) = parameter.Takes switch
        {
            WorkTakes.Amounts several => (several.Unit, several.Least, int.MaxValue),
            WorkTakes.Amount one => (one.Unit, 1, 1),
            WorkTakes.Alike alike => (_alike ?? UnitIn(text), alike.Least, alike.Most),
            _ => (Units.One, 1, 1),
        };
        if (!WorkAmounts.TryRead(text, usual, out IReadOnlyList<Quantity> amounts, out string? why))
        {
            return new ShopFault(parameter.Name, text, why);
        }

        if (amounts.Count < least || amounts.Count > most)
        {
            string wanted = most == 1 ? "give one value" : FormattableString.Invariant($"give {least} or more values");
            return new ShopFault(parameter.Name, text, wanted);
        }

        if (parameter.Takes is WorkTakes.Alike)
        {
            if (amounts[0].Dimension.IsTemperaturePoint)
            {
                return new ShopFault(
                    parameter.Name,
                    text,
                    "a place on a temperature scale is no amount: give differences, in K"
                );
            }

            _alike ??= amounts[0].Unit;
        }

        _amounts[parameter.Name] = amounts;
        _exact[parameter.Name] = [.. amounts.Select(Exact.Of)];
        return null;
    }

    private ShopFault? Take(WorkParameter parameter, IReadOnlyList<Exact> amounts)
    {
        (Unit unit, int least, int most) = parameter.Takes switch
        {
            WorkTakes.Amounts several => (several.Unit, several.Least, int.MaxValue),
            WorkTakes.Amount one => (one.Unit, 1, 1),
            WorkTakes.Alike alike => (UnitFor(amounts[0].Dimension), alike.Least, alike.Most),
            _ => (Units.One, 1, 1),
        };
        Quantity[] shown = new Quantity[amounts.Count];
        for (int i = 0; i < shown.Length; i++)
        {
            if (!TryShow(amounts[i], unit, out shown[i]))
            {
                return new ShopFault(parameter.Name, Allowed.Show(amounts[i]), "that is past any size of the shop");
            }
        }

        string text = string.Join(' ', shown);
        if (amounts.Count < least || amounts.Count > most)
        {
            return new ShopFault(
                parameter.Name,
                text,
                most == 1 ? "give one value" : FormattableString.Invariant($"give {least} or more values")
            );
        }

        if (parameter.Takes is WorkTakes.Alike)
        {
            _alike ??= unit;
        }

        _texts[parameter.Name] = text;
        _amounts[parameter.Name] = shown;
        _exact[parameter.Name] = amounts;
        return null;
    }

    // The first unit of the table whose factor is 1, else the first; the checker of formulas lets none through without one.
    private static Unit UnitFor(Dimension dimension) =>
        Units.All.FirstOrDefault(unit => unit.Dimension == dimension && unit.Factor == Rational.One)
        ?? Units.All.FirstOrDefault(unit => unit.Dimension == dimension)
        ?? Units.One;

    private static bool TryShow(Exact amount, Unit unit, out Quantity shown)
    {
        // What is exact in inches is exact in millimetres too, and not the other way round.
        foreach (Unit one in (Unit[])[UnitFor(amount.Dimension), unit])
        {
            if (amount.In(one).TryToDecimal(out decimal exact) && exact.Scale <= ShownPlaces)
            {
                shown = new Quantity(exact, one);
                return Math.Abs(exact) <= MostShown;
            }
        }

        return amount.TryToQuantity(unit, ShownPlaces, Rounding.Nearest, out shown)
            && Math.Abs(shown.Value) <= MostShown;
    }

    // The unit that stands last; numbers without any are pure.
    private static Unit UnitIn(string text)
    {
        string last = text.Split(' ', StringSplitOptions.RemoveEmptyEntries).LastOrDefault() ?? "";
        return Quantity.TryParse(last, out Quantity quantity) ? quantity.Unit : Units.Find(last) ?? Units.One;
    }

    // A near name is only asked about, never taken: a limit must not pass for a reading.
    private static string Meant(IReadOnlyList<WorkParameter> parameters, string name)
    {
        string[] near =
        [
            .. parameters
                .Select(one => one.Name)
                .Where(one =>
                    name.Length > 1
                    && (
                        one.StartsWith(name, StringComparison.Ordinal)
                        || one.Split('-').Intersect(name.Split('-')).Any()
                    )
                ),
        ];
        return near.Length > 0 ? $"did you mean {string.Join(" or ", near)}? " : "";
    }

    private static string Names(IReadOnlyList<WorkParameter> parameters) =>
        string.Join(", ", parameters.Select(one => one.Name));
}
