using ProcRunner.Formulas;
using ProcRunner.Problems;
using ProcRunner.Procedures;
using ProcRunner.Yaml.Trees;

namespace ProcRunner.Yaml.Plans;

/// <summary>Compiles the formulas of a procedure and puts their problems at their characters in the file.</summary>
internal sealed class FormulaReader(
    ProcedureNames names,
    IReadOnlySet<string> broken,
    SourcePlaces places,
    ProblemLog log
)
{
    /// <summary>Stands where a formula is needed that couldn't be read; the file is refused anyway.</summary>
    public static Formula Placeholder { get; } =
        ((FormulaResult.Compiled)FormulaCompiler.Compile("0", new NoNames(), null)).Formula;

    /// <summary>The formula, or null with its problems; null in silence for a null node.</summary>
    /// <param name="node">What stands in the file.</param>
    /// <param name="ofHead">Whether it is worked out for the head.</param>
    /// <param name="wanted">The type needed; null: any quantity.</param>
    public Formula? Read(Node? node, bool ofHead, FormulaType? wanted) =>
        TryRead(node, new Watched(names.For(ofHead), new HashSet<string>(0), broken), wanted, out Formula? formula)
            ? formula
            : null;

    /// <summary>As <see cref="Read"/>, but false in silence when the formula waits for some of the names still to come.</summary>
    public bool TryRead(
        Node node,
        bool ofHead,
        IReadOnlySet<string> pending,
        out Formula? formula,
        out IReadOnlyList<string> waitsFor
    )
    {
        Watched visible = new(names.For(ofHead), pending, broken);
        bool read = TryRead(node, visible, null, out formula);
        waitsFor = visible.MetPending;
        return read;
    }

    private bool TryRead(Node? node, Watched visible, FormulaType? wanted, out Formula? formula)
    {
        formula = null;
        if (node is null)
        {
            return true;
        }

        if (node is not Node.Scalar { Text.Length: > 0 } scalar)
        {
            log.Add("PR-Y08", node.Place, $"a formula is wanted here, in quotes; here stands {node.Shape}");
            return true;
        }

        FormulaResult result = FormulaCompiler.Compile(scalar.Text, visible, wanted);
        if (visible.MetPending.Count > 0)
        {
            return false;
        }

        if (result is FormulaResult.Compiled compiled)
        {
            formula = compiled.Formula;
            places.Add(formula, scalar.At(0));
            if (wanted is null && formula.Type is not FormulaType.OfQuantity)
            {
                log.Add("PR-F02", scalar.At(0), $"this gives {formula.Type}; a quantity is wanted here");
                formula = null;
            }

            return true;
        }

        // What rests on a mistake that was reported already says nothing new.
        if (!visible.Met(broken))
        {
            foreach (FormulaProblem problem in ((FormulaResult.Refused)result).Problems)
            {
                string part = problem.Part.Length > 0 ? $" at {Quoting.Of(problem.Part)}" : "";
                log.Add(CodeOf(problem.Fault), scalar.At(problem.Position), $"{problem.Message}{part}");
            }
        }

        return true;
    }

    private static string CodeOf(FormulaFault fault) =>
        fault switch
        {
            FormulaFault.TooLarge => "PR-F04",
            FormulaFault.UnknownName or FormulaFault.UnknownFunction => "PR-F03",
            FormulaFault.Units or FormulaFault.Kind => "PR-F02",
            _ => "PR-F01",
        };

    /// <summary>What a name is about, whichever way it asks.</summary>
    private static string? SubjectOf(string name) =>
        FormulaName.Parse(name) switch
        {
            FormulaName.Value found => found.Characteristic,
            FormulaName.ValueStatistic found => found.Characteristic,
            FormulaName.ValuePlace found => found.Characteristic,
            FormulaName.ValueEach found => found.Characteristic,
            FormulaName.Over found => found.Characteristic,
            FormulaName.OverEach found => found.Characteristic,
            FormulaName.AsFound found => found.Characteristic,
            FormulaName.SpecFigure found => found.Figure,
            FormulaName.SpecLimit found => found.Limit,
            FormulaName.ShopSetting found => found.Setting,
            FormulaName.Decided found => found.Subject,
            FormulaName.Found found => found.Subject,
            FormulaName.PositionsDecided found => found.Subject,
            FormulaName.Feature found => found.Name,
            _ => null,
        };

    /// <summary>Names that remember which of them were asked for in vain.</summary>
    private sealed class Watched(IFormulaNames inner, IReadOnlySet<string> pending, IReadOnlySet<string> broken)
        : IFormulaNames
    {
        private readonly HashSet<string> _unknown = new(StringComparer.Ordinal);

        public IReadOnlyList<string> MetPending => [.. _unknown.Where(pending.Contains)];

        // A name that is still to come, or was reported before, needs no suggestion.
        public IEnumerable<string> Known => Met(pending) || Met(broken) ? [] : inner.Known;

        public bool Met(IReadOnlySet<string> subjects) => _unknown.Overlaps(subjects);

        public FormulaType? TypeOf(string name)
        {
            FormulaType? type = inner.TypeOf(name);
            if (type is null && SubjectOf(name) is { } subject)
            {
                _unknown.Add(subject);
            }

            return type;
        }
    }

    private sealed class NoNames : IFormulaNames
    {
        public IEnumerable<string> Known => [];

        public FormulaType? TypeOf(string name) => null;
    }
}
