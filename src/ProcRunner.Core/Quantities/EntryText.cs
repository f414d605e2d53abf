using System.Globalization;
using ProcRunner.Text;

namespace ProcRunner.Quantities;

/// <summary>
/// Reads what an operator typed, a gauge sent or a scanner scanned. It never guesses and never converts: a value keeps the unit
/// it was typed in, and what can mean two things is asked about.
/// </summary>
/// <remarks>
/// Forms: <c>0.052</c>, <c>.052</c>, <c>52 thou</c>, <c>0.052"</c>, <c>1/16 in</c>, <c>1+17/32 in</c>, <c>-0.002</c>,
/// <c>45°30'</c>, <c>44 deg 53 min</c>, and several of them with spaces or semicolons between. A unit at the end of the line
/// holds for all values that have none, <c>8.000 8.002 8.010 mm</c>, and is asked about where it can have been the last one's alone.
/// </remarks>
public static class EntryText
{
    /// <summary>The longest entry that is read, in characters.</summary>
    public const int MostCharacters = 500;

    // How much of a text that was typed is shown again when it is questioned.
    internal const int MostShown = 60;

    private const string CommaWhy =
        "A comma can be a decimal point, a mark between thousands or a mark between values.";

    /// <summary>Reads an entry for a field. Never throws, whatever was typed.</summary>
    public static EntryResult Parse(string typed, FieldHint field)
    {
        if (typed.Length > MostCharacters)
        {
            string length = typed.Length.ToString(CultureInfo.InvariantCulture);
            return Unreadable(
                field,
                $"{length} characters, beginning {SafeText.Show(typed, 40)}",
                "Type it again, shorter."
            );
        }

        string line = typed.Trim(' ', '\t', '\r', '\n');
        if (line.Length == 0)
        {
            return Unreadable(field, "nothing", $"Type {CountOf(field)}.");
        }

        EntryReading reading = line.Contains(',')
            ? new EntryReading.Ambiguous(CommaWhy, CommaForms.Of(line))
            : EntryReader.Read(line, field);
        return reading switch
        {
            EntryReading.Clear clear when SharedUnit.DoubtOf(clear.Values, field) is { } doubt => Ask(
                doubt,
                line,
                field
            ),
            EntryReading.Clear clear => Believe(clear.Values, line, field),
            EntryReading.Ambiguous doubt => Ask(doubt, line, field),
            EntryReading.Faulty fault => Unreadable(field, fault.WhatWasRead, fault.WhatToDo),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    /// <summary>
    /// Texts that were typed one by one, as one line that reads the same. A unit at the end of a line holds for all that have
    /// none, so where any of them has a unit, all get one.
    /// </summary>
    /// <param name="texts">Each not empty, without space around it.</param>
    /// <param name="unit">The unit of those without.</param>
    public static string Join(IReadOnlyList<string> texts, Unit unit) =>
        texts.All(IsBare)
            ? string.Join(' ', texts)
            : string.Join("; ", texts.Select(text => IsBare(text) ? $"{text} {unit.Symbol}".TrimEnd() : text));

    private static bool IsBare(string text) => char.IsAsciiDigit(text[^1]) || text[^1] == '.';

    /// <summary>How many values a field takes, in words.</summary>
    internal static string CountOf(FieldHint field)
    {
        string fewest = field.FewestValues.ToString(CultureInfo.InvariantCulture);
        string most = field.MostValues.ToString(CultureInfo.InvariantCulture);
        return field.MostValues == 1 ? "one value"
            : field.FewestValues == field.MostValues ? $"{most} values"
            : $"{fewest} to {most} values";
    }

    private static EntryResult Believe(IReadOnlyList<EntryValue> values, string line, FieldHint field)
    {
        ExpectedRange range = new(field);
        Quantity[] amounts = new Quantity[values.Count];
        bool isDoubtful = false;
        for (int i = 0; i < amounts.Length; i++)
        {
            amounts[i] = values[i].Quantity;
            isDoubtful |= range.IsDoubtful(values[i]);
        }

        if (!isDoubtful)
        {
            return new EntryResult.Taken(amounts, line);
        }

        string numbers = string.Join(
            ", ",
            values.Where(range.IsDoubtful).Select(value => value.Quantity.Value.ToString(CultureInfo.InvariantCulture))
        );
        return Question(
            $"{numbers} with no unit is far from what is expected here.",
            range.Meanings(values),
            line,
            field
        );
    }

    private static EntryResult Ask(EntryReading.Ambiguous doubt, string line, FieldHint field)
    {
        ExpectedRange range = new(field);
        List<IReadOnlyList<EntryValue>> readings = [];
        foreach (string rewrite in doubt.Rewrites)
        {
            if (
                EntryReader.Read(rewrite, field) is EntryReading.Clear clear
                && !readings.Exists(other => SameAmounts(other, clear.Values))
            )
            {
                readings.Add(clear.Values);
            }
        }

        List<IReadOnlyList<EntryValue>> likely = readings.FindAll(values => !values.Any(range.IsDoubtful));
        return Question(
            doubt.Why,
            (likely.Count > 0 ? likely : readings).Select(values =>
                string.Join("; ", values.Select(value => value.Text))
            ),
            line,
            field
        );
    }

    private static bool SameAmounts(IReadOnlyList<EntryValue> left, IReadOnlyList<EntryValue> right) =>
        left.Select(value => value.Quantity).SequenceEqual(right.Select(value => value.Quantity));

    // With no meaning that can be typed back there is nothing to ask.
    private static EntryResult Question(string why, IEnumerable<string> meanings, string line, FieldHint field)
    {
        string[] offered = [.. meanings.Where(text => text.Length <= MostCharacters).Distinct(StringComparer.Ordinal)];
        return offered.Length > 0
            ? new EntryResult.Questioned(why, offered)
            : Unreadable(
                field,
                $"{SafeText.Show(line, MostShown)}. {why}",
                "Type each number with one point and its unit, spaces between."
            );
    }

    private static EntryResult.Unreadable Unreadable(FieldHint field, string whatWasRead, string whatToDo)
    {
        string unit = field.Unit == Units.One ? "a pure number" : $"{field.Unit.Dimension} ({field.Unit.Symbol})";
        return new EntryResult.Unreadable(whatWasRead, $"{CountOf(field)}: {unit}", whatToDo);
    }
}
