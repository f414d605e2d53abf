using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Work;

/// <summary>
/// Errors met in print. Each test shows the wrong figure to be what the error makes of the inputs, where that can be worked out, and
/// the program to give the right one and not the wrong.
/// </summary>
public class PublishedErrorsTests
{
    private static readonly Elasticity Steel = new(210_000, 0.292);

    // https://askfilo.com/user-question-answers-smart-solutions/please-state-your-assumptions-and-show-all-your-work-clearly-3431303536313731:
    // shaft of 60 mm with 0.030 mm in a hub of 100 mm. "Verified" there with (1 - nu^2)(1 + beta) for the shape; solid and of one
    // material it is beta + 1, which has no Poisson's ratio in it.
    [Fact]
    public void A_solid_shaft_of_one_material_has_no_poisson_ratio_in_its_pressure()
    {
        const double Beta = ((100.0 * 100) + (60.0 * 60)) / ((100.0 * 100) - (60.0 * 60));
        const double Wrong = 210_000 * 0.030 / (60 * (1 - (0.292 * 0.292)) * (1 + Beta));
        double pressure = Pressure(0, 60, 100, Steel, 0.030);

        Assert.Equal(33.6, pressure, 10);
        Assert.Equal(36.7, Wrong, 1);
        NotNear(Wrong, pressure);
        Assert.Equal(pressure, Pressure(0, 60, 100, Steel with { Poisson = 0 }, 0.030), 10);
    }

    // Ugural and Fenster, Ex. 8.3: 12.3 MPa. A public notebook of it divides by 8 where the contact's radius of 200 mm stands, and gets
    // 307.6; with the modulus typed as 200 it is 0.3076.
    [Fact]
    public void Interference_is_divided_by_the_radius_of_contact()
    {
        double pressure = Pressure(300, 400, 500, new Elasticity(200_000, 0.3), 0.2);
        double wrong = pressure * 200 / 8;

        Assert.Equal(12.3046875, pressure, 7);
        Assert.Equal(307.6, wrong, 1);
        Assert.Equal(0.3076, wrong * 200 / 200_000, 4);
        NotNear(wrong, pressure);
    }

    // Jindal, Machine Design, Ex. 8.1: a public notebook of it divides whole numbers and gets 16.0 N/mm.
    [Fact]
    public void A_spring_rate_is_no_whole_number()
    {
        const int Wrong = 84_000 * (5 * 5 * 5 * 5) / (8 * (30 * 30 * 30) * 15);
        double rate = new WireSpring(5, 30, 15, 84_000).RateNewtonsPerMillimetre;

        Assert.Equal(16, Wrong);
        Assert.Equal(16.2037, rate, 4);
        NotNear(Wrong, rate);
        WorkBench.Gives(
            "spring-from-wire",
            "wire=5 mm; mean-diameter=30 mm; coils=15; shear-modulus=84 GPa",
            "rate=16.2037 N/mm"
        );
    }

    // A public table of ISO 286: the row s starts with 10 and 17; of 10 and 30 mm it has p6 +20/+29 and +28/+44.
    [Theory]
    [InlineData("3 mm", "s6", 14, 20, 10, 16)]
    [InlineData("6 mm", "s6", 19, 27, 17, 25)]
    [InlineData("10 mm", "p6", 15, 24, 20, 29)]
    [InlineData("30 mm", "p6", 22, 35, 28, 44)]
    // Several public tables: one value of s or r for all of 50 to 80 mm, so that one half of the step is wrong.
    [InlineData("65 mm", "s6", 53, 72, 59, 78)]
    [InlineData("65.001 mm", "s6", 59, 78, 53, 72)]
    [InlineData("65 mm", "r6", 41, 60, 43, 62)]
    [InlineData("65.001 mm", "r6", 43, 62, 41, 60)]
    // Edges: a step is over its lower end up to and including its upper. 30 mm is no part of 30 to 50, and 50 mm no part of 50 to 65.
    [InlineData("30 mm", "r6", 28, 41, 34, 50)]
    [InlineData("30 mm", "s6", 35, 48, 43, 59)]
    [InlineData("50 mm", "s6", 43, 59, 53, 72)]
    [InlineData("30 mm", "H7", 0, 21, 0, 25)]
    [InlineData("50 mm", "H7", 0, 25, 0, 30)]
    public void Limits_that_a_table_has_wrong(
        string nominal,
        string @class,
        int lower,
        int upper,
        int wrongLower,
        int wrongUpper
    )
    {
        SizeLimits limits = Known.Value(IsoDeviation.Limits(Known.Of(nominal), @class));

        Assert.Equal((lower, upper), (Micrometres(limits.Lower), Micrometres(limits.Upper)));
        Assert.NotEqual((wrongLower, wrongUpper), (Micrometres(limits.Lower), Micrometres(limits.Upper)));
    }

    // http://gagerandr.com/wp-content/uploads/2014/09/VariableRandR_Xbar.htm: a root over PV / GRR, which makes 2 classes of 5.
    [Fact]
    public void Classes_of_a_gauge_study_have_no_root_in_them()
    {
        GaugeStudy study = new(0.2018566667, 0.2296670291, 1.1045955556);

        Assert.Equal(5.0937, study.Categories, 4);
        Assert.Equal(2.68, 1.41 * Math.Sqrt(study.Part / study.Gauge), 2);
        NotNear(1.41 * Math.Sqrt(study.Part / study.Gauge), study.Categories);
    }

    // NIST/SEMATECH e-Handbook 6.3.2.2, its ten readings: one page quotes 1.8674 as their certified standard deviation. It is neither that
    // nor the sigma of the chart, 1.8778 / 1.128.
    [Fact]
    public void A_certified_deviation_that_is_none()
    {
        decimal[] readings = [49.6m, 47.6m, 49.9m, 51.3m, 47.8m, 51.2m, 52.6m, 52.4m, 53.6m, 52.1m];
        double deviation = Known.Value(Univariate.Of([.. readings.Select(Rational.FromDecimal)])).Deviation;
        double sigma = Known.Value(ControlLimits.OfIndividuals([.. readings.Select(one => (double)one)])).Sigma;

        Assert.Equal(2.0339, deviation, 4);
        Assert.Equal(1.6647, sigma, 4);
        NotNear(1.8674, deviation);
        NotNear(1.8674, sigma);
    }

    // A maker's page of a V6: guide 10.023 to 10.034 in a hole of 9.960 to 9.978, printed 0.027 to 0.059. Its own limits give 0.045 to
    // 0.074; 0.027 to 0.059 belongs to a hole of 9.975 to 9.996.
    [Fact]
    public void A_fit_that_its_own_limits_contradict()
    {
        const string Part = "part-smallest=10.023 mm; part-largest=10.034 mm";
        WorkBench.Gives(
            "fit-from-limits",
            $"hole-smallest=9.960 mm; hole-largest=9.978 mm; {Part}",
            "least interference=0.045 mm; most interference=0.074 mm"
        );
        WorkBench.Gives(
            "fit-from-limits",
            $"hole-smallest=9.975 mm; hole-largest=9.996 mm; {Part}",
            "least interference=0.027 mm; most interference=0.059 mm"
        );
    }

    private static double Pressure(
        double inside,
        double diameter,
        double outside,
        Elasticity material,
        double interference
    ) =>
        Known
            .Value(Known.Value(PressFit.Of(inside, diameter, outside, material, material)).AtInterference(interference))
            .PressureMegapascals;

    private static int Micrometres(Exact size) => (int)size.In(Units.Micrometre).ToDouble();

    private static void NotNear(double wrong, double found) => Assert.True(Math.Abs(wrong - found) > 0.01 * wrong);
}
