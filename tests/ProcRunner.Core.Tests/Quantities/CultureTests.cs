using System.Globalization;
using ProcRunner.Quantities;

namespace ProcRunner.Tests.Quantities;

/// <summary>The machine's language changes nothing: no decimal comma, no other minus, no other digits.</summary>
public sealed class CultureTests
{
    [Theory]
    [InlineData("de-DE")] // 1.234,5
    [InlineData("fr-FR")] // 1 234,5
    [InlineData("sv-SE")] // minus is U+2212
    [InlineData("ar-EG")] // other digits
    [InlineData("tr-TR")] // other upper case of i
    public void Reads_and_writes_the_same_in_every_language(string name)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        CultureInfo culture = CultureInfo.GetCultureInfo(name);
        try
        {
            CultureInfo.CurrentCulture = culture;
            EntryTextTests entries = new();
            foreach (object[] row in EntryTextTests.Lengths)
            {
                entries.Reads_a_length((string)row[0], (string)row[1]);
            }

            foreach (object[] row in EntryTextTests.Degrees)
            {
                entries.Reads_an_angle((string)row[0], (string)row[1]);
            }

            entries.Asks_what_a_comma_means("1,250", "1.250 in|1250 in");
            entries.Asks_about_a_bare_number_far_from_what_is_expected("-0.052", "0.052 in|-0.052 in");
            entries.Names_both_counts_when_the_number_of_places_is_wrong();
            Assert.Equal("-0.0520 in", new Quantity(-0.0520m, Units.Inch).ToString());
            Assert.Equal("-44\u00B053.5'", new Quantity(-2693.5m, Units.ArcMinute).ToDisplay());
            Assert.Equal("-1/3", Rational.FromRatio(-1, 3).ToString());
            Assert.Equal("length^4 time^-1", new Dimension(4, 0, -1, 0, 0, IsTemperaturePoint: false).ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void The_languages_really_differ_here() =>
        Assert.Equal("1,5", 1.5m.ToString(CultureInfo.GetCultureInfo("de-DE")));
}
