using System.Globalization;
using ProcRunner.ShopMath;
using ProcRunner.Text;
using ProcRunner.Trail;

namespace ProcRunner.Tui.Commands;

/// <summary>The shop's calculations as JSON. Numbers are texts with all their digits, as everywhere in this program.</summary>
internal static class WorkJson
{
    /// <summary>Every function with what it asks for.</summary>
    public static Json OfAll() => Json.MapOf(("functions", Json.ListOf([.. WorkFunctions.All.Select(Function)])));

    /// <summary>An answer with its steps.</summary>
    public static Json Of(WorkFunction function, WorkAnswer answer) =>
        Json.MapOf(
            ("function", Text(function.Name)),
            ("results", Json.ListOf([.. answer.Results.Select(Result)])),
            ("steps", Json.ListOf([.. answer.Steps.Select(Step)]))
        );

    /// <summary>Why there is none.</summary>
    public static Json Of(WorkFunction function, ShopFault fault) =>
        Json.MapOf(
            ("function", Text(function.Name)),
            (
                "fault",
                Json.MapOf(
                    ("argument", Text(fault.Argument)),
                    ("read", Text(fault.Read)),
                    ("allowed", Text(fault.Allowed))
                )
            )
        );

    private static Json Function(WorkFunction function) =>
        Json.MapOf(
            ("name", Text(function.Name)),
            ("family", Text(function.Family)),
            ("summary", Text(function.Summary)),
            ("source", Text(function.Source)),
            ("parameters", Json.ListOf([.. function.Parameters.Select(Parameter)]))
        );

    private static Json Parameter(WorkParameter parameter) =>
        Json.MapOf(
            ("name", Text(parameter.Name)),
            ("takes", Text(parameter.Takes.ToString()!)),
            ("summary", Text(parameter.Summary)),
            ("optional", parameter.IsOptional ? Text("yes") : Text("no"))
        );

    private static Json Result(WorkFigure figure) =>
        figure.Value is { } value
            ? Json.MapOf(
                ("name", Text(figure.Name)),
                (
                    "amount",
                    Json.MapOf(
                        ("v", Text(value.Value.ToString(CultureInfo.InvariantCulture))),
                        ("u", Text(value.Unit.Symbol))
                    )
                )
            )
            : Json.MapOf(("name", Text(figure.Name)), ("text", Text(figure.Text)));

    private static Json Step(WorkStep step) =>
        Json.MapOf(
            ("name", Text(step.Name)),
            ("formula", Text(step.Formula)),
            ("with-numbers", Text(step.WithNumbers)),
            ("result", Text(step.Result))
        );

    // What was typed may hold half a character, which is no text.
    private static Json.Text Text(string text) => new(SafeText.Clean(text));
}
