using System.Globalization;
using ProcRunner.Formulas;
using ProcRunner.Problems;
using ProcRunner.Quantities;

namespace ProcRunner.Procedures.Checks;

/// <summary>
/// Holds a procedure against the head spec it is to run with: everything that a step works to or reads is there, and is
/// the kind of quantity that the procedure means. Steps that this head never gets to ask for nothing.
/// </summary>
public sealed class PlanCheck
{
    private readonly Procedure _procedure;
    private readonly HeadSpec _head;
    private readonly ProcedureNames _names;
    private readonly Position[] _kinds;
    private readonly Dictionary<string, Need> _needs = new(StringComparer.Ordinal);
    private readonly List<Problem> _problems = [];
    private readonly Place _whole;

    private PlanCheck(Procedure procedure, HeadSpec head, string fileName)
    {
        _procedure = procedure;
        _head = head;
        _names = ProcedureNames.Of(procedure);
        _kinds = [.. head.Positions.DistinctBy(position => position.Kind)];
        _whole = new Place(fileName, 0, 0);
    }

    /// <summary>Everything that keeps the two from going together; empty when they do.</summary>
    /// <param name="procedure">A procedure without problems.</param>
    /// <param name="head">A head spec without problems.</param>
    /// <param name="fileName">The head spec's file, which most of these problems are mended in.</param>
    public static IReadOnlyList<Problem> Join(Procedure procedure, HeadSpec head, string fileName)
    {
        PlanCheck check = new(procedure, head, fileName);
        check.Features();
        check.Figures();
        check.Forbidden();
        foreach (Step step in procedure.Steps)
        {
            check.Check(step);
        }

        check.ReportNeeds();
        return check._problems;
    }

    private void Features()
    {
        foreach (string feature in _procedure.Features.Order(StringComparer.Ordinal))
        {
            if (!_head.Features.ContainsKey(feature))
            {
                string text =
                    $"the procedure asks whether the head has '{feature}'; add '{feature}: yes' or 'no' under features";
                _problems.Add(new Problem("PR-J03", _whole, text));
            }
        }
    }

    private void Figures()
    {
        foreach (string figure in _procedure.Figures.Keys.Order(StringComparer.Ordinal))
        {
            if (!_head.Figures.Keys.Any(key => key.Name == figure))
            {
                string text =
                    $"the procedure asks for the figure '{figure}', a {_procedure.Figures[figure]}; add it under figures";
                _problems.Add(new Problem("PR-J02", _whole, text));
            }
        }
    }

    // A spec may forbid work that the procedure never does; but a slip of the pen would allow what was meant to be forbidden.
    private void Forbidden()
    {
        HashSet<string> works = [.. _procedure.Steps.Select(step => step.IsWork).OfType<string>()];
        foreach (string work in _head.Forbidden.Keys.Where(work => !works.Contains(work)).Order(StringComparer.Ordinal))
        {
            if (NearNames.Of(work, works) is [var near, ..])
            {
                string text =
                    $"the head forbids '{work}', and the procedure has '{near}'; spell both alike if they are the same work";
                _problems.Add(new Problem("PR-J05", _whole, text));
            }
        }
    }

    private void Check(Step step)
    {
        if (step.OfHead)
        {
            if (CanHold(step, null))
            {
                Check(step, null);
            }

            return;
        }

        Position[] at =
        [
            .. _kinds.Where(one => step.Kinds.Count == 0 || step.Kinds.Contains(one.Kind, StringComparer.Ordinal)),
        ];
        if (at.Length == 0)
        {
            string there = string.Join(", ", _kinds.Select(one => one.Kind));
            Report(step, "PR-P03", $"is for {string.Join(", ", step.Kinds)}, but the head has {there}");
            return;
        }

        if (!at.Any(position => CanHold(step, position, featuresKnown: false)))
        {
            Report(
                step,
                "PR-P03",
                $"is never done on this head: no kind of position makes {step.OnlyWhere!.Text} hold"
            );
            return;
        }

        foreach (Position position in at.Where(position => CanHold(step, position)))
        {
            Check(step, position);
        }
    }

    private void Check(Step step, Position? position)
    {
        if (step.Taking is { } taking)
        {
            foreach ((string limit, string characteristic) in taking.SpecLimits)
            {
                bool isAim = step.Work is StepWork.Cut && characteristic == taking.Characteristic;
                NeedLimit(step, position, limit, isAim ? LimitEnd.Aim : null, DimensionOf(characteristic));
            }
        }

        foreach (string name in StepFormulas.All(step).SelectMany(FormulaNames.Needed).Distinct(StringComparer.Ordinal))
        {
            if (FormulaName.Parse(name) is FormulaName.SpecFigure figure)
            {
                NeedFigure(step, position, figure.Figure);
            }
            else if (
                FormulaName.Parse(name) is FormulaName.SpecLimit limit
                && _names.For(step.OfHead).TypeOf(name) is FormulaType.OfQuantity type
            )
            {
                NeedLimit(step, position, limit.Limit, limit.End, type.Dimension);
            }
        }
    }

    private void NeedLimit(Step step, Position? position, string name, LimitEnd? end, Dimension dimension)
    {
        Limit? limit = _head.LimitOf(name, position);
        if (limit is null)
        {
            Need("PR-J01", $"the limit '{name}'", step, position);
            return;
        }

        Quantity? any = limit.Low ?? limit.High ?? limit.Aim;
        if (any is { } given && given.Dimension != dimension)
        {
            string text =
                $"the limit '{name}' is a {given.Dimension} ({given}), but the procedure works with a {dimension} there";
            AddOnce("PR-J04", $"{text}; correct its unit");
            return;
        }

        bool known =
            limit.Ask is not null
            || end switch
            {
                LimitEnd.Low => limit.Low is not null,
                LimitEnd.High => limit.High is not null,
                LimitEnd.Aim => limit.Aim is not null || (limit.Low is not null && limit.High is not null),
                _ => true,
            };
        if (!known)
        {
            string which = end.ToString()!.ToLower(CultureInfo.InvariantCulture);
            Need("PR-J01", $"'{which}' in the limit '{name}'", step, position);
        }
    }

    private void NeedFigure(Step step, Position? position, string name)
    {
        if (_head.FigureOf(name, position) is not { } figure)
        {
            if (_head.Figures.Keys.Any(key => key.Name == name))
            {
                Need("PR-J02", $"the figure '{name}'", step, position);
            }

            return;
        }

        if (_procedure.Figures.TryGetValue(name, out Dimension wanted) && figure.Value.Dimension != wanted)
        {
            string text =
                $"the figure '{name}' is a {figure.Value.Dimension} ({figure.Value}), but the procedure asks for a {wanted}";
            AddOnce("PR-J04", $"{text}; correct its unit");
        }
    }

    private Dimension DimensionOf(string characteristic) => _names.Characteristic(characteristic)!.Dimension;

    private bool CanHold(Step step, Position? position, bool featuresKnown = true) =>
        step.OnlyWhere is null
        || Conditions.CanHold(
            step.OnlyWhere,
            name =>
                FormulaName.Parse(name) switch
                {
                    FormulaName.OwnKind => position is null ? null : [position.Kind],
                    FormulaName.Feature one when featuresKnown && _head.Features.TryGetValue(one.Name, out bool has) =>
                    [
                        has ? "yes" : "no",
                    ],
                    FormulaName.Feature => ["yes", "no"],
                    FormulaName.Decided one => _names.Decision(one.Subject)?.Words,
                    FormulaName.Found one => _names.Finding(one.Subject)?.Words,
                    _ => null,
                }
        );

    /// <summary>Gathers what is missing, so that one limit is one problem however many steps work to it.</summary>
    private void Need(string code, string what, Step step, Position? position)
    {
        string key = $"{code} {what}";
        if (!_needs.TryGetValue(key, out Need? need))
        {
            _needs[key] = need = new Need(code, what, step);
        }

        need.Kinds.Add(position?.Kind ?? "the head");
    }

    private void ReportNeeds()
    {
        foreach (Need need in _needs.Values)
        {
            string section = need.Code == "PR-J02" ? "figures" : "limits or fits";
            _problems.Add(
                new Problem(
                    need.Code,
                    _whole,
                    $"{need.What} is missing for {string.Join(", ", need.Kinds)}; the step '{need.Step.FullName}' ({need.Step.Source}) needs it: add it under {section}"
                )
            );
        }
    }

    private void Report(Step step, string code, string clause) =>
        _problems.Add(
            new Problem(code, step.Source, $"'{step.FullName}' {clause}; correct the step or choose another procedure")
        );

    private void AddOnce(string code, string text)
    {
        Problem problem = new(code, _whole, text);
        if (!_problems.Contains(problem))
        {
            _problems.Add(problem);
        }
    }
}
