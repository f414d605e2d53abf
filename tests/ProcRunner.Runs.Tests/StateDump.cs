using System.Collections;
using System.Collections.Concurrent;
using System.Reflection;
using System.Text;
using ProcRunner.Quantities;

namespace ProcRunner.Runs.Tests;

/// <summary>Everything a run's state holds, as text: two states are the same when their dumps are.</summary>
internal static class StateDump
{
    private static readonly ConcurrentDictionary<Type, PropertyInfo[]> Properties = new();

    public static string Of(RunState state)
    {
        StringBuilder text = new();
        foreach (PropertyInfo property in Readable(typeof(RunState)))
        {
            if (property.Name != nameof(RunState.Plan))
            {
                text.Append(property.Name).Append(": ");
                Write(text, property.GetValue(state));
                text.AppendLine();
            }
        }

        foreach (At at in EveryPlace(state.Plan))
        {
            Line(text, state.Plan.NameOf(at), state.Find(at));
        }

        return text.Append(OfValues(state)).ToString();
    }

    /// <summary>Every characteristic's value alone.</summary>
    public static string OfValues(RunState state)
    {
        StringBuilder text = new();
        for (int c = 0; c < state.Plan.Procedure.Characteristics.Count; c++)
        {
            for (int position = At.Head; position < state.Plan.Positions.Count; position++)
            {
                string name = state.Plan.Procedure.Characteristics[c].Name;
                Line(text, $"{name} of {state.Plan.PositionName(position)}", state.Value(c, position));
            }
        }

        return text.ToString();
    }

    public static IEnumerable<At> EveryPlace(Plan plan) =>
        plan.Steps.SelectMany(step =>
            Enumerable.Range(At.Head, plan.Positions.Count + 1).Select(position => new At(step.Index, position))
        );

    private static void Line(StringBuilder text, string name, object? value)
    {
        if (value is not null)
        {
            text.Append(name).Append(": ");
            Write(text, value);
            text.AppendLine();
        }
    }

    private static void Write(StringBuilder text, object? value)
    {
        switch (value)
        {
            case null:
                text.Append('-');
                break;
            case string or Quantity or At or Enum or bool or int or long or DateTimeOffset:
                text.Append(value);
                break;
            case IDictionary map:
                foreach (DictionaryEntry entry in map)
                {
                    text.Append(entry.Key).Append('=').Append(entry.Value).Append("; ");
                }

                break;
            case IEnumerable many:
                text.Append('[');
                foreach (object? one in many)
                {
                    Write(text, one);
                    text.Append(", ");
                }

                text.Append(']');
                break;
            default:
                text.Append('{');
                foreach (PropertyInfo property in Readable(value.GetType()))
                {
                    text.Append(property.Name).Append('=');
                    Write(text, property.GetValue(value));
                    text.Append("; ");
                }

                foreach (FieldInfo field in value.GetType().GetFields(BindingFlags.Public | BindingFlags.Instance))
                {
                    Write(text, field.GetValue(value));
                    text.Append("; ");
                }

                text.Append('}');
                break;
        }
    }

    private static PropertyInfo[] Readable(Type type) =>
        Properties.GetOrAdd(
            type,
            static t =>
                [
                    .. t.GetProperties(BindingFlags.Public | BindingFlags.Instance)
                        .Where(p => p.GetIndexParameters().Length == 0 && p.Name != "EqualityContract"),
                ]
        );
}
