using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ProcRunner.Quantities;
using ProcRunner.Text;

namespace ProcRunner.Tests.Quantities;

/// <summary>What holds for any entry in any field.</summary>
public sealed class EntryTextProperties
{
    // Pieces of which entries and near misses are made, so that random lines come close to real ones.
    private static readonly string[] Pieces =
    [
        "0",
        "1",
        "9",
        "52",
        "0.052",
        ".",
        "..",
        ",",
        "-",
        "+",
        "/",
        " ",
        "  ",
        ";",
        "\t",
        "17/32",
        "1/3",
        "1+1/2",
        "in",
        "mm",
        "thou",
        "\"",
        "\u00B0",
        "'",
        "deg",
        "min",
        "degF",
        "lbf",
        "1/K",
        "%",
        "K",
        "e-3",
        "NaN",
        "\u0665",
        "\uD800",
        "\uDC00",
        "\u001b[2J",
        "\0",
        "\r\n",
        "\u00A0",
        "\u202E",
        "\u00B5m",
        "\u03BCin",
        "99999999999999999999999999999",
        "0x",
        "\u2212",
    ];

    // Words that belong in a length or angle field, whole.
    private static readonly string[] Words =
    [
        "0.052",
        "52",
        "-.5",
        "1/16",
        "1+1/2",
        "0,052",
        "1,250",
        "0.0.5",
        "1-1/4",
        "1/4",
        "7 thou",
        "1.3mm",
        "45\u00B0",
        "53",
        "30'",
        "44 deg 53 min",
        ";",
        "0",
        "5 lbf",
    ];

    private static Gen<FieldHint> Fields =>
        from unit in Gen.OneOf(
            Gen.Elements(Units.All.ToArray()),
            Gen.Elements(Units.Inch, Units.Millimetre, Units.Degree)
        )
        from fewest in Gen.Choose(1, 3)
        from more in Gen.Choose(0, 3)
        from low in LengthQuantities.Of([unit])
        from high in LengthQuantities.Of([unit])
        from ends in Gen.Choose(0, 3)
        let isRisen = low.CompareTo(high) <= 0
        select new FieldHint(
            unit,
            fewest,
            fewest + more,
            (ends & 1) == 0 ? null
                : isRisen ? low
                : high,
            (ends & 2) == 0 ? null
                : isRisen ? high
                : low
        );

    private static Gen<string> Lines =>
        Gen.OneOf(
            Gen.Elements(Words).ListOf(3).Select(words => string.Join(' ', words)),
            Gen.Elements(Words).ListOf(1).Select(words => string.Join(' ', words)),
            Gen.Elements(Pieces).ListOf().Select(pieces => string.Concat(pieces)),
            Gen.Choose(0, 0xFFFF).Select(c => (char)c).ListOf().Select(chars => string.Concat(chars))
        );

    [Property(MaxTest = 3000)]
    public Property Whatever_is_typed_gets_an_answer_that_holds() =>
        Prop.ForAll(Lines.ToArbitrary(), Fields.ToArbitrary(), (typed, field) => Holds(typed, field));

    [Fact]
    public void An_endless_line_gets_an_answer()
    {
        FieldHint field = new(Units.Inch, 1, 1000, new Quantity(1, Units.Inch), new Quantity(2, Units.Inch));
        foreach (string piece in Pieces)
        {
            string endless = new StringBuilder().Insert(0, piece, 100_000 / piece.Length).ToString();
            Assert.True(Holds(endless, field), SafeText.Show(piece, 60));
            Assert.True(Holds(endless[..EntryText.MostCharacters], field), SafeText.Show(piece, 60));
            Assert.True(Holds(string.Join(' ', Enumerable.Repeat(piece, 150)), field));
        }
    }

    [Property]
    public Property The_text_of_a_quantity_is_taken_as_that_quantity() =>
        Prop.ForAll(
            LengthQuantities.Of(Units.All).ToArbitrary(),
            quantity =>
            {
                FieldHint field = new(Units.All.First(unit => unit.Dimension == quantity.Dimension));
                return IsTakenAs(quantity.ToString(), field, quantity)
                    && IsTakenAs(quantity.ToDisplay(), field, quantity);
            }
        );

    private static bool IsTakenAs(string text, FieldHint field, Quantity quantity) =>
        EntryText.Parse(text, field) is EntryResult.Taken { Values: [var value] }
        && value == quantity
        && value.Value.Scale == quantity.Value.Scale;

    private static bool Holds(string typed, FieldHint field) =>
        EntryText.Parse(typed, field) switch
        {
            EntryResult.Taken taken => taken.Values.Count >= field.FewestValues
                && taken.Values.Count <= field.MostValues
                && taken.Values.All(value => value.Dimension == field.Unit.Dimension),
            EntryResult.Questioned questioned => IsPlain(questioned.Why)
                && questioned.Meanings.Count is > 0 and <= 9
                && questioned.Meanings.All(text => IsTakenOneWay(text, field)),
            EntryResult.Unreadable no => IsPlain(no.WhatWasRead) && IsPlain(no.Expected) && IsPlain(no.WhatToDo),
            _ => false,
        };

    // Taken, and as the same values whatever unit a bare number would be in: every number has its own.
    private static bool IsTakenOneWay(string meaning, FieldHint field) =>
        EntryText.Parse(meaning, field) is EntryResult.Taken taken
        && Units
            .All.Where(unit => unit.Dimension == field.Unit.Dimension && field.Unit != Units.One)
            .Select(unit => EntryText.Parse(meaning, new FieldHint(unit, field.FewestValues, field.MostValues)))
            .All(other => other is EntryResult.Taken same && same.Values.SequenceEqual(taken.Values));

    private static bool IsPlain(string text) =>
        text.Length > 0
        && !text.EnumerateRunes()
            .Any(rune => Rune.IsControl(rune) || rune == Rune.ReplacementChar || rune.Value == 0x202E);
}
