using ProcRunner.Quantities;

namespace ProcRunner.Tests.Quantities;

/// <summary>What is typed and what it is read as; the amounts are plain arithmetic.</summary>
public sealed class EntryTextTests
{
    private static readonly FieldHint Inches = new(Units.Inch);
    private static readonly FieldHint Angles = new(Units.Degree);
    private static readonly FieldHint FourPlaces = new(Units.Inch, 4, 4);

    // A recession of 0.048 to 0.056 in, made up.
    private static readonly FieldHint Recession = new(
        Units.Inch,
        low: new Quantity(0.048m, Units.Inch),
        high: new Quantity(0.056m, Units.Inch)
    );

    public static TheoryData<string, string> Lengths =>
        new()
        {
            { "0.052", "0.052 in" },
            { ".052", "0.052 in" },
            { "0.0520", "0.0520 in" },
            { "5.", "5 in" },
            { "52 thou", "52 thou" },
            { "52thou", "52 thou" },
            { "0.052 in", "0.052 in" },
            { "0.052\"", "0.052 in" },
            { "0.052 \"", "0.052 in" },
            { "1.32 mm", "1.32 mm" },
            { "  1.32mm\r\n", "1.32 mm" },
            { "32 \u03BCin", "32 \u00B5in" },
            { "1/16 in", "0.0625 in" },
            { "1/16", "0.0625 in" },
            { "1/16\"", "0.0625 in" },
            { "1+17/32 in", "1.53125 in" },
            { "-1+17/32", "-1.53125 in" },
            { "-3/8", "-0.375 in" },
            { "-0.002", "-0.002 in" },
            { "-.002", "-0.002 in" },
            { "+.5", "0.5 in" },
            { "-0", "0 in" },
        };

    [Theory]
    [MemberData(nameof(Lengths))]
    public void Reads_a_length(string typed, string expected) => Assert.Equal([expected], Taken(typed, Inches));

    public static TheoryData<string, string> Degrees =>
        new()
        {
            { "45", "45 deg" },
            { "45\u00B0", "45 deg" },
            { "45 deg", "45 deg" },
            { "44.5 deg", "44.5 deg" },
            { "45\u00B030'", "2730 arcmin" },
            { "45\u00B0 30'", "2730 arcmin" },
            { "45\u00B030\u2032", "2730 arcmin" },
            { "45 deg 30 min", "2730 arcmin" },
            { "44 deg 53 min", "2693 arcmin" },
            { "44deg 53.5min", "2693.5 arcmin" },
            { "-0\u00B030'", "-30 arcmin" },
            { "-1\u00B030'", "-90 arcmin" },
            { "30'", "30 arcmin" },
        };

    [Theory]
    [MemberData(nameof(Degrees))]
    public void Reads_an_angle(string typed, string expected) => Assert.Equal([expected], Taken(typed, Angles));

    [Theory]
    [InlineData("0.0231 0.0229 0.0230 0.0231", "0.0231 in|0.0229 in|0.0230 in|0.0231 in")]
    [InlineData("0.0231;0.0229 ; 0.0230\t0.0231", "0.0231 in|0.0229 in|0.0230 in|0.0231 in")]
    [InlineData("1 2 3 4 mm", "1 mm|2 mm|3 mm|4 mm")] // a unit at the end holds for all that have none
    [InlineData("1; 2; 3; 4 mm", "1 mm|2 mm|3 mm|4 mm")]
    [InlineData("1 2 in 3 4 mm", "1 mm|2 in|3 mm|4 mm")]
    [InlineData("3/2 2 3 4 mm", "1.5 mm|2 mm|3 mm|4 mm")]
    [InlineData("1 mm 2 3thou 4", "1 mm|2 in|3 thou|4 in")]
    [InlineData("1\"2\"3\"4\"", "1 in|2 in|3 in|4 in")]
    [InlineData("1 -2 +3 -4", "1 in|-2 in|3 in|-4 in")]
    public void Reads_several_places(string typed, string expected) =>
        Assert.Equal(expected.Split('|'), Taken(typed, FourPlaces));

    [Theory]
    [InlineData("degF", "300 degF", "300 degF")]
    [InlineData("degF", "150\u00B0C", "150 degC")]
    [InlineData("1/K", "0.0000117 1/K", "0.0000117 1/K")]
    [InlineData("cm3", "58.5cc", "58.5 cm3")]
    [InlineData("lbf\u00B7ft", "25ft-lb", "25 lbf\u00B7ft")]
    [InlineData("lbf/in", "310 lb/in", "310 lbf/in")]
    [InlineData("MPa", "30N/mm2", "30 MPa")]
    [InlineData("", "0.5", "0.5")]
    [InlineData("", "50%", "50 %")]
    [InlineData("s", "5 min", "5 min")]
    public void Reads_in_a_field_of_another_kind(string unit, string typed, string expected) =>
        Assert.Equal([expected], Taken(typed, new FieldHint(Units.Find(unit)!)));

    [Fact]
    public void Keeps_what_was_typed() =>
        Assert.Equal("52 thou", Assert.IsType<EntryResult.Taken>(EntryText.Parse(" 52 thou\r\n", Inches)).Typed);

    [Theory]
    [InlineData("52", "0.052 in|52 thou|52 in")]
    [InlineData("0.52", "0.052 in|0.52 in")]
    [InlineData(".0052", "0.052 in|0.0052 in")]
    [InlineData("1.32", "1.32 mm|1.32 in")]
    [InlineData("-0.052", "0.052 in|-0.052 in")]
    [InlineData("0", "0 in")]
    [InlineData("0.62", "0.062 in|0.62 mm|0.62 in")]
    [InlineData("9000", "0.09000 in|9000 in")]
    public void Asks_about_a_bare_number_far_from_what_is_expected(string typed, string meanings) =>
        Assert.Equal(meanings.Split('|'), Questioned(typed, Recession));

    [Theory]
    [InlineData("0.047")]
    [InlineData("0.062")]
    [InlineData("0.100")]
    [InlineData("0.020")]
    public void A_bare_number_merely_out_of_limits_is_for_the_limits_to_refuse(string typed) =>
        Assert.Equal([typed + " in"], Taken(typed, Recession));

    [Theory]
    [InlineData("52 in")]
    [InlineData("52 mm")]
    [InlineData("-3 thou")]
    [InlineData("0 in")]
    public void A_number_typed_with_its_unit_is_never_asked_about(string typed) =>
        Assert.Single(Taken(typed, Recession));

    [Fact]
    public void Reads_all_doubtful_numbers_of_a_line_in_the_same_way()
    {
        FieldHint field = new(Units.Inch, 2, 3, new Quantity(0.020m, Units.Inch), new Quantity(0.025m, Units.Inch));
        Assert.Equal(
            ["0.0231 in; 0.0229 in; 0.0230 in", "0.0231 in; 229 in; 0.0230 in"],
            Questioned("0.0231 229 0.0230", field)
        );
        Assert.Equal(
            ["22 thou; 0.023 in; 0.022 in", "22 thou; 23 thou; 22 thou", "22 thou; 23 in; 22 in"],
            Questioned("22 thou 23 22", field)
        );
    }

    // A gauge that sends its unit, after places typed in inches: no inch is taken for a millimetre unasked.
    [Fact]
    public void A_unit_at_the_end_is_asked_about_where_only_the_fields_own_makes_sense()
    {
        FieldHint field = new(Units.Inch, 3, 3, new Quantity(0.313m, Units.Inch), new Quantity(0.317m, Units.Inch));
        Assert.Equal(["8.000 mm", "8.002 mm", "8.010 mm"], Taken("8.000 8.002 8.010 mm", field));
        Assert.Equal(
            ["0.3150 in; 0.3151 in; 8.002 mm", "0.3150 mm; 0.3151 mm; 8.002 mm"],
            Questioned("0.3150 0.3151 8.002 mm", field)
        );

        // Where nothing is expected the places tell among themselves: 0.0548 in is 1.392 mm.
        Assert.Equal(
            ["0.0548 in; 0.0545 in; 1.390 mm", "0.0548 mm; 0.0545 mm; 1.390 mm"],
            Questioned("0.0548 0.0545 1.390 mm", new FieldHint(Units.Inch, 3, 3))
        );
    }

    // 20 degC is 68 degF, and 70 degF is 21.1 degC: which scale was read shows only in the range.
    [Theory]
    [InlineData("degF", "20", "20 degC|20 degF")]
    [InlineData("degC", "70", "70 degF|70 degC")]
    public void A_temperature_of_the_other_scale_is_asked_about(string unit, string typed, string meanings)
    {
        FieldHint field = new(
            Units.Find(unit)!,
            low: new Quantity(60m, Units.Fahrenheit),
            high: new Quantity(80m, Units.Fahrenheit)
        );
        Assert.Equal(meanings.Split('|'), Questioned(typed, field));
        Assert.Single(Taken("85", new FieldHint(Units.Fahrenheit, low: field.Low, high: field.High)));
    }

    [Fact]
    public void Offers_no_meaning_that_reads_as_something_else_when_typed_back()
    {
        // 0.12 as a pure number would be 12 %, but typed bare it is 0.12 % again.
        Quantity tenPercent = new(10, Units.Percent);
        Assert.Equal(["12 %", "0.12 %"], Questioned("0.12", new FieldHint(Units.Percent, low: tenPercent)));
    }

    [Fact]
    public void A_range_in_another_unit_serves_as_well()
    {
        FieldHint field = new(
            Units.Inch,
            low: new Quantity(1.2m, Units.Millimetre),
            high: new Quantity(1.4m, Units.Millimetre)
        );
        Assert.Equal(["0.052 in", "52 thou", "52 in"], Questioned("52", field));
    }

    [Fact]
    public void A_range_open_at_one_end_or_about_zero_is_judged_by_its_size()
    {
        Quantity high = new(0.002m, Units.Inch);
        Assert.Single(Taken("0", new FieldHint(Units.Inch, high: high)));
        Assert.Single(Taken("0.0001", new FieldHint(Units.Inch, low: new Quantity(0, Units.Inch), high: high)));
        Assert.Contains("0.002 in", Questioned("0.02", new FieldHint(Units.Inch, high: high)));
        Assert.Single(Taken("-0.001", new FieldHint(Units.Inch, low: new Quantity(-0.002m, Units.Inch), high: high)));
        Assert.Single(Taken("9", new FieldHint(Units.Inch, low: new Quantity(1, Units.Inch))));
        Assert.Contains("1.5 in", Questioned("0.15", new FieldHint(Units.Inch, low: new Quantity(1, Units.Inch))));
    }

    [Theory]
    [InlineData("0,052", "0.052 in")]
    [InlineData("0,052 mm", "0.052 mm")]
    [InlineData("1,250", "1.250 in|1250 in")]
    [InlineData("1,234.5", "1234.5 in")]
    [InlineData("1.234,5", "1234.5 in")]
    public void Asks_what_a_comma_means(string typed, string meanings) =>
        Assert.Equal(meanings.Split('|'), Questioned(typed, Inches));

    [Fact]
    public void A_comma_can_part_values_where_several_are_taken()
    {
        FieldHint field = new(Units.Inch, 1, 2);
        Assert.Equal(["0.052 in", "0 in; 52 in"], Questioned("0,052", field).Order(StringComparer.Ordinal).Reverse());
        Assert.Equal(["0.0231 in; 0.0229 in"], Questioned("0.0231, 0.0229", field));
        Assert.Equal(["0.023 in; 0.024 in"], Questioned("0,023 0,024", field));
    }

    [Fact]
    public void Of_the_meanings_of_a_comma_the_believable_ones_are_offered() =>
        Assert.Equal(["0.052 in"], Questioned("0,052", Recession));

    [Theory]
    [InlineData("0.0.52", "0.052 in")]
    [InlineData("0..052", "0.052 in")]
    public void Asks_which_of_two_points_is_meant(string typed, string meanings) =>
        Assert.Equal(meanings.Split('|'), Questioned(typed, Recession));

    [Fact]
    public void A_lost_space_shows_as_a_second_point() =>
        Assert.Contains("0.0231 in; 0.0229 in", Questioned("0.0231.0229", new FieldHint(Units.Inch, 2, 2)));

    [Theory]
    [InlineData("1-17/32 in", "1+17/32 in")]
    [InlineData("1 17/32 in", "1+17/32 in")]
    [InlineData("1 +17/32", "1+17/32 in")]
    [InlineData("-2 1/4", "-2+1/4 in")]
    public void Asks_about_a_mixed_fraction_without_its_plus(string typed, string meanings) =>
        Assert.Equal(meanings.Split('|'), Questioned(typed, Inches));

    [Fact]
    public void A_number_and_a_fraction_can_be_two_values() =>
        Assert.Equal(["1+1/2 in", "1 in; 1/2 in"], Questioned("1 1/2", new FieldHint(Units.Inch, 1, 2)));

    [Fact]
    public void Asks_whether_a_bare_number_after_degrees_is_minutes()
    {
        Assert.Equal(["44 deg 53 min"], Questioned("44\u00B053", Angles));
        Assert.Equal(["45 deg 46 min", "45 deg; 46 deg"], Questioned("45 deg 46", new FieldHint(Units.Degree, 1, 2)));
        Assert.Equal(["45 deg", "46 deg"], Taken("45 deg; 46", new FieldHint(Units.Degree, 1, 2)));
    }

    [Fact]
    public void Minutes_after_a_bare_number_are_asked_about()
    {
        Assert.Equal(["44 deg 53 min"], Questioned("44 53'", Angles));
        Assert.Equal(
            ["44 deg; 53 arcmin", "44 arcmin; 53 arcmin"],
            Questioned("44 53'", new FieldHint(Units.Degree, 2, 2))
        );
        Assert.Equal(["44 deg", "2730 arcmin"], Taken("44 45\u00B030'", new FieldHint(Units.Degree, 2, 2)));
    }

    [Theory]
    [InlineData("", "nothing")]
    [InlineData("   ", "nothing")]
    [InlineData("abc", "abc with no number before it")]
    [InlineData("NaN", "NaN with no number before it")]
    [InlineData("1e-3", "e-3 after 1")]
    [InlineData("0x1F", "x1F after 0")]
    [InlineData("\u0665", "with no number before it")] // Arabic-Indic five
    [InlineData("5\u0665", "after 5")]
    [InlineData("\uFF15", "with no number before it")] // full-width five
    [InlineData("\u22125", "with no number before it")] // a minus sign that is not the key's
    [InlineData("1/3 in", "no decimal equals exactly")]
    [InlineData("1+1/3 in", "no decimal equals exactly")]
    [InlineData("1/0", "over 0")]
    [InlineData("1/", "not a fraction")]
    [InlineData("1/2/3", "not a fraction")]
    [InlineData("1+2", "not a number")]
    [InlineData("0.052-0.053", "not a number")]
    [InlineData("--5", "not a number")]
    [InlineData("- 5", "not a number")]
    [InlineData("5-", "not a number")]
    [InlineData(".", "not a number")]
    [InlineData("0.00000000000000000000000000001", "more digits than can be kept")] // 29 places
    [InlineData("79228162514264337593543950336", "more digits than can be kept")] // 2^96
    [InlineData("5 furlong", "furlong after 5, which is no unit known here")]
    [InlineData("5 in mm", "mm with no number before it")]
    [InlineData("5 ; in", "in with no number before it")]
    [InlineData("5;", "semicolon")]
    [InlineData(";5", "semicolon")]
    [InlineData("5;;6", "semicolon")]
    [InlineData("5 \u001b[31mmm", "\\u001b[31mmm after 5")]
    [InlineData("5\u00A0mm", "\\u00a0mm after 5")]
    [InlineData("5\0", "\\u0000 after 5")]
    [InlineData("5 \u202Emm", "\\u202emm")] // right-to-left override
    [InlineData("1,,2", ",,")]
    [InlineData(",", ",")]
    public void Says_what_it_can_not_read(string typed, string part) =>
        Assert.Contains(part, Unreadable(typed, Inches).WhatWasRead, StringComparison.Ordinal);

    [Theory]
    [InlineData("90 lbf", "force")]
    [InlineData("45\u00B0", "angle")]
    [InlineData("300 F", "temperature")]
    [InlineData("0.052 mm/rev", "length per turn")]
    public void Names_both_kinds_when_the_unit_is_of_another(string typed, string kind)
    {
        EntryResult.Unreadable result = Unreadable(typed, Inches);
        Assert.Contains($"a {kind}, where the field takes a length", result.WhatWasRead, StringComparison.Ordinal);
        Assert.Contains("in, thou", result.WhatToDo, StringComparison.Ordinal);
    }

    [Fact]
    public void Names_both_counts_when_the_number_of_places_is_wrong()
    {
        EntryResult.Unreadable three = Unreadable("0.0231 0.0229 0.0230", FourPlaces);
        Assert.StartsWith("3 value(s): 0.0231 in; 0.0229 in", three.WhatWasRead, StringComparison.Ordinal);
        Assert.Equal("4 values: length (in)", three.Expected);
        Assert.StartsWith(
            "2 to 3 values",
            Unreadable("1", new FieldHint(Units.Inch, 2, 3)).Expected,
            StringComparison.Ordinal
        );
        Assert.StartsWith("one value", Unreadable("1 2", Inches).Expected, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("45\u00B060'")]
    [InlineData("44.5\u00B030'")]
    public void Refuses_minutes_that_are_none(string typed) =>
        Assert.Contains("minutes below 60", Unreadable(typed, Angles).WhatWasRead, StringComparison.Ordinal);

    [Fact]
    public void Reads_up_to_500_characters()
    {
        Assert.Single(Taken("1" + new string(' ', 499), Inches));
        EntryResult.Unreadable result = Unreadable("1" + new string(' ', 500), Inches);
        Assert.StartsWith("501 characters", result.WhatWasRead, StringComparison.Ordinal);
    }

    [Fact]
    public void Offers_no_meaning_too_long_to_be_typed_back()
    {
        Quantity high = new(0.056m, Units.Inch);
        FieldHint field = new(Units.Inch, 1, 200, high: high);
        Assert.NotEmpty(Questioned(string.Join(' ', Enumerable.Repeat("52", 30)), field));
        Assert.Contains(
            "far from what is expected",
            Unreadable(string.Join(' ', Enumerable.Repeat("52", 160)), field).WhatWasRead,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_field_can_not_be_declared_back_to_front()
    {
        Quantity one = new(1, Units.Inch);
        Assert.Throws<ArgumentException>(() =>
            new FieldHint(Units.Inch, low: one, high: new Quantity(1, Units.Millimetre))
        );
        Assert.Throws<ArgumentException>(() => new FieldHint(Units.Newton, high: one));
        Assert.Throws<ArgumentOutOfRangeException>(() => new FieldHint(Units.Inch, 2, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new FieldHint(Units.Inch, 0, 1));
    }

    private static IEnumerable<string> Taken(string typed, FieldHint field) =>
        Assert.IsType<EntryResult.Taken>(EntryText.Parse(typed, field)).Values.Select(value => value.ToString());

    private static IReadOnlyList<string> Questioned(string typed, FieldHint field) =>
        Assert.IsType<EntryResult.Questioned>(EntryText.Parse(typed, field)).Meanings;

    private static EntryResult.Unreadable Unreadable(string typed, FieldHint field) =>
        Assert.IsType<EntryResult.Unreadable>(EntryText.Parse(typed, field));
}
