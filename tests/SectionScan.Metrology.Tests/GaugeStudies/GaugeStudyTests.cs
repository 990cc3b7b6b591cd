using MathNet.Numerics.Distributions;
using SectionScan.Metrology.GaugeStudies;
using SectionScan.Metrology.Results;

namespace SectionScan.Metrology.Tests.GaugeStudies;

public sealed class GaugeStudyTests
{
    private static readonly Plug[] Plugs =
        [.. new[] { 15.0, 25, 40 }.Select(d => new Plug(FormattableString.Invariant($"d{d}"), PlugShape.Circle, d, d, 0.002))];

    [Fact]
    public void A_line_through_exact_points_is_the_line_and_its_uncertainty_that_of_the_points()
    {
        // 2·e + s·L with e = 0.01, s = 0.002. By hand for L = 10, 20, 30, all u = 0.006: u(slope) = u/√200, u(mean) = u/√3.
        var line = BiasLine.Through([(10, 0.04, 0.006), (20, 0.06, 0.006), (30, 0.08, 0.006)], double.PositiveInfinity);

        Assert.Equal((0.01, 0.002), (line.EdgeMm, line.Scale), new Near(1e-12));
        Assert.Equal(0.006 / Math.Sqrt(200), line.ScaleStandardUncertainty, 1e-12);
        Assert.Equal(Math.Sqrt((0.006 * 0.006 / 3) + (400 * 0.006 * 0.006 / 200)) / 2, line.EdgeStandardUncertaintyMm, 1e-12);
    }

    [Fact]
    public void What_is_known_of_the_scale_counts_as_much_as_plugs_that_tell_it_as_well()
    {
        // The slope's own uncertainty is u/√200; known as well as that to be zero, it is halved, and the line turns about its middle.
        var line = BiasLine.Through([(10, 0.04, 0.006), (20, 0.06, 0.006), (30, 0.08, 0.006)], 0.006 / Math.Sqrt(200));

        Assert.Equal(0.001, line.Scale, 1e-12);
        Assert.Equal((0.06 - (20 * 0.001)) / 2, line.EdgeMm, 1e-12);
    }

    [Fact]
    public void Points_that_stray_from_the_line_widen_its_uncertainty_by_Birge_s_ratio()
    {
        // Residuals +r, −2r, +r of a line through L = 10, 20, 30: χ² = 6·r²/u² on one degree of freedom.
        var exact = BiasLine.Through([(10, 0, 0.001), (20, 0, 0.001), (30, 0, 0.001)], double.PositiveInfinity);
        var stray = BiasLine.Through([(10, 0.01, 0.001), (20, -0.02, 0.001), (30, 0.01, 0.001)], double.PositiveInfinity);

        Assert.Equal(exact.ScaleStandardUncertainty * Math.Sqrt(6) * 10, stray.ScaleStandardUncertainty, 1e-12);
    }

    [Fact]
    public void Bias_repeatability_and_reproducibility_put_in_are_found_again()
    {
        // Edge 0.012 mm, scale −0.001, persons 0.02 mm apart in standard deviation, repeats 0.01 mm; ten persons, six photos each.
        var random = new Random(3);
        var persons = Enumerable.Range(0, 10).Select(i => (Name: $"person {i}", Shift: Normal.Sample(random, 0, 0.02))).ToArray();
        var readings =
            from plug in Plugs
            from person in persons
            from repeat in Enumerable.Range(0, 6)
            select new PlugReading(
                "p.jpg", plug.Name, person.Name, "phone", "A", (2 * 0.012) - (0.001 * plug.WidthMm) + person.Shift + Normal.Sample(random, 0, 0.01), 0.1);

        var study = GaugeStudy.Of("study.csv", ("sheet", null, true, []), double.PositiveInfinity, Plugs, [.. readings]).ValueOrThrow();

        // Standard errors: of repeats 0.01/√(2·168), of ten persons 0.02/√18.
        Assert.Equal(0.01, study.RepeatabilityMm, 3 * 0.01 / Math.Sqrt(336));
        Assert.Equal(0.02, study.ReproducibilityMm, 3 * 0.02 / Math.Sqrt(18));
        Assert.Equal(-0.001, study.Bias.Scale, 3 * study.Bias.ScaleStandardUncertainty);
        Assert.Equal(0.012, study.Bias.EdgeMm, 3 * Math.Sqrt(Math.Pow(study.Bias.EdgeStandardUncertaintyMm, 2) + (0.01 * 0.01 / 10)));
        Assert.Equal(study.ReproducibilityMm, study.Factors.Single(f => f.Factor == "person").ReproducibilityMm!.Value, 1e-12);
        Assert.All(study.Factors.Where(f => f.Factor != "person"), f => Assert.Null(f.ReproducibilityMm));

        // What a measurement then takes: e, u(e), a repeat's and a person's part of one edge, in squares.
        Assert.Equal(
            Math.Sqrt(Math.Pow(study.Bias.EdgeMm, 2) + Math.Pow(study.Bias.EdgeStandardUncertaintyMm, 2) + (Math.Pow(study.RepeatabilityMm, 2) / 4)
                + (Math.Pow(study.ReproducibilityMm, 2) / 4)),
            study.EdgeStandardUncertaintyMm, 2e-4);
    }

    [Fact]
    public void A_study_that_is_not_crossed_is_refused_and_told_what_lacks()
    {
        var readings = Plugs.SelectMany(plug => new[] { 0.01, 0.02 }.Select(x => new PlugReading("p.jpg", plug.Name, "Ann", "phone", "A", x, 0.1))).ToArray();

        var problem = Problem(Plugs, [.. readings, new("p.jpg", "d25", "Bob", "phone", "A", 0.01, 0.1)]);

        Assert.Equal("gauge-not-crossed", problem.Code);
        Assert.Contains("never with Bob", problem.What, StringComparison.Ordinal);
        Assert.Contains("once by each", Problem(Plugs, [.. readings.Where(r => r.ExcessMm < 0.015)]).What, StringComparison.Ordinal);
        Assert.Contains("one plug only", Problem([Plugs[0]], [.. readings.Where(r => r.Plug == "d15")]).What, StringComparison.Ordinal);
    }

    [Fact]
    public void Plugs_that_are_nearly_of_one_size_cannot_tell_edge_from_scale()
    {
        Plug[] alike = [new("a", PlugShape.Circle, 30, 30, 0.002), new("b", PlugShape.Square, 32, 32, 0.002)];

        var problem = Problem(alike, [.. alike.SelectMany(p => new[] { 0.01, 0.02 }.Select(x => new PlugReading("p.jpg", p.Name, "Ann", "phone", "A", x, 0.1)))]);

        Assert.Equal("gauge-plugs-alike", problem.Code);
        Assert.Contains("1.5 times", problem.Remedy, StringComparison.Ordinal);
    }

    private static Problem Problem(Plug[] plugs, PlugReading[] readings)
    {
        Assert.False(GaugeStudy.Of("study.csv", ("sheet", null, true, []), double.PositiveInfinity, plugs, readings).TryGet(out _, out var problem));
        return problem;
    }

    private sealed class Near(double tolerance) : IEqualityComparer<(double, double)>
    {
        public bool Equals((double, double) x, (double, double) y) =>
            Math.Abs(x.Item1 - y.Item1) <= tolerance && Math.Abs(x.Item2 - y.Item2) <= tolerance;

        public int GetHashCode((double, double) x) => 0;
    }
}
