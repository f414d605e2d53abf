using ProcRunner.ShopMath;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Maths;

/// <summary>
/// Asks for what a calculation takes, filled in where the head in hand has the number, and shows the working. After the
/// working the form stands there again with what was given, so that one number can be changed.
/// </summary>
internal sealed class WorkForm : FormScreen
{
    private readonly MathsDesk _desk;
    private readonly WorkFunction _function;
    private WorkAnswer? _answer;

    /// <summary>A form for a calculation.</summary>
    /// <param name="desk">Where it is worked from.</param>
    /// <param name="function">The calculation.</param>
    /// <param name="given">What was given before, by parameter; none the first time.</param>
    public WorkForm(MathsDesk desk, WorkFunction function, IReadOnlyDictionary<string, string>? given = null)
        : base(desk.Words)
    {
        (_desk, _function) = (desk, function);
        Fields = [.. function.Parameters.Select(FieldOf)];
        for (int i = 0; i < Fields.Count && given is not null; i++)
        {
            Fields[i].Value = given.GetValueOrDefault(function.Parameters[i].Name);
        }
    }

    /// <inheritdoc/>
    public override bool IsPractice => _desk.IsPractice;

    /// <inheritdoc/>
    protected override string Title => $"Work out: {_function.Name.Replace('-', ' ')}";

    /// <inheritdoc/>
    protected override string Intro => $"{_function.Summary}. {MathsDesk.Promise}";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; }

    /// <inheritdoc/>
    protected override string? Write()
    {
        KeyValuePair<string, string>[] given =
        [
            .. _function
                .Parameters.Select((one, i) => KeyValuePair.Create(one.Name, Given(one, Fields[i].Text)))
                .Where(pair => pair.Value.Length > 0),
        ];
        if (_function.Answer(given).TryGet(out _answer, out ShopFault? fault))
        {
            return null;
        }

        AtFault = _function
            .Parameters.ToList()
            .FindIndex(one => one.Name == fault.Argument || one.Words == fault.Argument);
        return fault.ToString();
    }

    /// <inheritdoc/>
    protected override Turn Done()
    {
        Dictionary<string, string> given = [];
        for (int i = 0; i < Fields.Count; i++)
        {
            given[_function.Parameters[i].Name] = Fields[i].Text;
        }

        return new Turn.Instead(new WorkForm(_desk, _function, given), new WorkedScreen(_desk, _function, _answer!));
    }

    private Field FieldOf(WorkParameter parameter)
    {
        KnownNumber[] known = [.. _desk.For(parameter)];
        string meant = _desk.Meant(parameter)?.Line ?? "";
        return parameter.Takes is WorkTakes.Word word
            ? new Field(parameter.Words, FieldKind.Choice)
            {
                Choices = () => parameter.IsOptional ? ["", .. word.Choices] : word.Choices,
                Proposed = () => _desk.WordFor(parameter) ?? "",
                MayBeEmpty = parameter.IsOptional,
                Hint = () => parameter.Summary,
            }
            : new Field(parameter.Words)
            {
                Choices = () => [.. known.Select(one => one.Line)],
                Proposed = () => meant,
                MayBeEmpty = parameter.IsOptional,
                Hint = () => HintOf(parameter, known.Length > 0),
                Fault = text => FaultOf(parameter, text),
            };
    }

    private string HintOf(WorkParameter parameter, bool hasKnown)
    {
        string unit = _desk.UnitOf(parameter) is { } usual ? $"; without a unit: {usual.Symbol}" : "";
        string many = parameter.Takes is WorkTakes.Amounts or WorkTakes.Alike { Most: > 1 }
            ? "; several with spaces"
            : "";
        string pick = hasKnown ? ". A whole number alone picks from the list; 2.0 is an amount" : "";
        return $"{parameter.Summary}{many}{unit}{pick}.";
    }

    private string? FaultOf(WorkParameter parameter, string text) =>
        text.Length == 0
        || WorkArguments
            .Read([parameter], [KeyValuePair.Create(parameter.Name, Given(parameter, text))])
            .TryGet(out _, out ShopFault? fault)
            ? null
            : fault.ToString();

    // A line of the list gives its amounts; a bare number takes the usual unit.
    private string Given(WorkParameter parameter, string text)
    {
        string amounts = KnownNumber.AmountsOf(text);
        bool isBare =
            amounts.Length > 0 && amounts.All(c => char.IsAsciiDigit(c) || c is '.' or '-' or '+' or '/' or ' ');
        return isBare && _desk.UnitOf(parameter) is { } unit ? $"{amounts} {unit.Symbol}" : amounts;
    }
}
