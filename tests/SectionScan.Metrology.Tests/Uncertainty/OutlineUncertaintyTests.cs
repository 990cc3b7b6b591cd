using System.Diagnostics;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.Uncertainty;

public sealed class OutlineUncertaintyTests
{
    private static readonly OutlineErrorSource Systematic = new("edge, systematic", [new NormalOffsetEffect(0.015)]);

    [Fact]
    public void The_stadiums_area_budget_has_the_rows_of_the_worked_example()
    {
        // A = 951.752, P = 111.9646: print ratio 0.05 mm over 200 and over 150 gives A·0.05/200 and A·0.05/150; an edge offset gives
        // P·0.015; ±0.1 % shrinkage, rectangular, gives 2A·0.001/√3.
        var outline = AnalyticShapes.Stadium(14, 12);
        OutlineErrorSource[] sources =
        [
            new("print scale", [new LinearEffect(0.05 / 200, 0, 0, 0), new LinearEffect(0, 0, 0, 0.05 / 150)]),
            Systematic,
            new("mould shrinkage", [LinearEffect.Scale(0.001 / Math.Sqrt(3))], true),
        ];

        var rows = OutlineUncertainty.Of(outline, sources, MeasureCatalogue.Area).Rows;

        Assert.Equal(["print scale", "edge, systematic", "mould shrinkage"], rows.Select(row => row.Source));
        Assert.Equal(Math.Sqrt((0.237938 * 0.237938) + (0.317251 * 0.317251)), rows[0].StandardUncertainty, 4e-5);
        Assert.Equal(1.679469, rows[1].StandardUncertainty, 1e-4);
        Assert.Equal(1.098989, rows[2].StandardUncertainty, 1e-4);
    }

    [Fact]
    public void A_random_edge_gives_the_area_sigma_times_the_root_of_perimeter_and_correlation_length()
    {
        var outline = AnalyticShapes.Ellipse(20, 14);
        OutlineErrorSource[] sources = [new("edge, random", [new RandomEdgeEffect(0.02, 0.5)])];

        var u = OutlineUncertainty.Of(outline, sources, MeasureCatalogue.Area).CombinedStandardUncertainty;

        // Blocks are whole numbers of corners, so that a block is up to a third longer or shorter than 0.5 mm.
        Assert.Equal(0.02 * Math.Sqrt(107.647 * 0.5), u, 0.02 * u);
    }

    [Fact]
    public void A_doubtful_stretch_moves_as_much_area_as_its_profile_holds_and_only_there()
    {
        // On a nearly straight edge the area moved is u·∫(1 − (s/r)⁴) ds over −r…r = 1.6·u·r (elementary calculus).
        OutlineErrorSource[] sources = [new("faint", [new LocalOffsetEffect(0.2, 60, 0, 3)])];

        var measured = MeasuredOutline.Of(AnalyticShapes.Circle(60), sources);

        Assert.Equal(1.6 * 0.2 * 3, measured[MeasureCatalogue.Area].Estimate.StandardUncertainty, 0.03);

        // Moved inward the stretch no longer holds the circle's extreme, its ends do: less than the full 0.2 mm.
        Assert.InRange(measured[MeasureCatalogue.Width].Estimate.StandardUncertainty, 0.1, 0.2);
        Assert.Equal(0, measured[MeasureCatalogue.Height].Estimate.StandardUncertainty, 1e-9);
    }

    [Fact]
    public void An_offset_changes_every_length_of_a_circle_by_what_geometry_says()
    {
        var measured = MeasuredOutline.Of(AnalyticShapes.Circle(18), [Systematic]);

        Assert.Equal(0.03, U(MeasureCatalogue.Width), 1e-6);
        Assert.Equal(0.03, U(MeasureCatalogue.Height), 1e-6);
        Assert.Equal(0.03, U(MeasureCatalogue.MaxFeret), 1e-6);
        Assert.Equal(0.03, U(MeasureCatalogue.MinFeret), 1e-6);
        Assert.Equal(0.03, U(MeasureCatalogue.EquivalentDiameter), 1e-5);
        Assert.Equal(0.03, U(MeasureCatalogue.HydraulicDiameter), 1e-5);
        Assert.Equal(2 * Math.PI * 0.015, U(MeasureCatalogue.Perimeter), 1e-5);
        Assert.Equal(0, U(MeasureCatalogue.Circularity), 1e-9);
        Assert.Equal(0.015 * Math.PI * 36, U(MeasureCatalogue.Area), 1e-4);

        double U(Measure measure) => measured[measure].Estimate.StandardUncertainty;
    }

    [Fact]
    public void An_offset_of_one_side_widens_the_circle_by_once_its_length()
    {
        // ∮max(0, n·d) ds over a circle is 2R: half the outline, facing by 2/π on average.
        OutlineErrorSource[] sources = [new("slice thickness", [new FacingOffsetEffect(0.1, 1, 0)])];

        var measured = MeasuredOutline.Of(AnalyticShapes.Circle(18), sources);

        Assert.Equal(0.1, measured[MeasureCatalogue.Width].Estimate.StandardUncertainty, 1e-4);
        // Beside the topmost point the wall rises by d²/2R = 0.00028 at most.
        Assert.InRange(measured[MeasureCatalogue.Height].Estimate.StandardUncertainty, 0, 0.00028);
        Assert.Equal(0.1 * 36, measured[MeasureCatalogue.Area].Estimate.StandardUncertainty, 1e-3);
    }

    [Fact]
    public void Without_sources_the_uncertainty_is_unknown_rather_than_zero()
    {
        var measured = MeasuredOutline.Of(AnalyticShapes.Circle(18), []);

        Assert.All(measured.Quantities, quantity => Assert.False(quantity.IsUncertaintyKnown));
        Assert.Equal(36, measured[MeasureCatalogue.Width].Estimate.Value, 1e-9);
        Assert.Throws<ArgumentException>(() => measured[MeasureCatalogue.LargestMoment]);
    }

    [Fact]
    public void An_offset_that_folds_the_outline_still_gives_finite_uncertainties()
    {
        // A slot 0.4 mm wide closes when its walls move by 5 mm.
        var slotted = AnalyticShapes.Polygon((0, 0), (20, 0), (20, 20), (10.2, 20), (10, 5), (9.8, 20), (0, 20));
        OutlineErrorSource[] sources =
        [
            new("edge", [new NormalOffsetEffect(5), new FacingOffsetEffect(5, 0, 1), new RandomEdgeEffect(5, 0.1), new RandomEdgeEffect(5, 1e4)]),
        ];

        var budgets = OutlineUncertainty.Of(slotted, sources, [.. MeasureCatalogue.All, MeasureCatalogue.WidthAt(10)]);

        Assert.All(budgets, budget => Assert.True(double.IsFinite(budget.CombinedStandardUncertainty)));
    }

    [Theory]
    [InlineData("D-section")]
    [InlineData("ellipse")]
    public void The_budget_agrees_with_a_Monte_Carlo_propagation_of_all_systematic_causes(string shape)
    {
        // JCGM 101:2008, clause 8: the check of a budget by draws.
        OutlineErrorSource[] sources =
        [
            new("print scale", [new LinearEffect(2.5e-4, 0, 0, 0), new LinearEffect(0, 0, 0, 3.3e-4), new LinearEffect(0, 2e-4, 0, 0)]),
            Systematic,
            new("slice thickness", [new FacingOffsetEffect(0.02, 0.8, 0.6)]),
        ];

        // The D-section's largest Feret diameter lies in 67° of directions at once and jumps among them: not linear, by 5 %.
        Check(Shape(shape), sources, MeasureCatalogue.All, 6000, largestRatio: 0.06);
    }

    [Theory]
    [InlineData("D-section", 0.02, 0.5)]
    [InlineData("ellipse", 0.02, 0.5)]
    [InlineData("ellipse", 0.01, 3)]
    [InlineData("D-section", 0.005, 0.2)]
    public void The_budget_of_a_random_edge_agrees_with_draws_of_noisy_outlines(string shape, double sigma, double correlation)
    {
        // The budget takes the outline in blocks and few draws; the root mean square error includes the bias, which is not corrected.
        OutlineErrorSource[] sources = [new("edge, random", [new RandomEdgeEffect(sigma, correlation)])];

        Check(Shape(shape), sources, [.. MeasureCatalogue.All, MeasureCatalogue.WidthAt(2)], 3000, largestRatio: 0.15);
    }

    [Fact]
    public void A_flat_wall_under_noise_stands_out_by_the_expected_largest_of_its_independent_points()
    {
        // 50 independent points on the left wall and on the right, two each in the roof and the floor. Largest of 50 standard normal
        // values: mean 2.2491, standard deviation 0.4645 (tables of normal order statistics, H. L. Harter 1961, cited from memory).
        const double sigma = 0.01;
        var outline = AnalyticShapes.Polygon(
            [.. Enumerable.Range(0, 50).Select(i => (20.0, i - 24.5)), .. Enumerable.Range(0, 50).Select(i => (-20.0, 24.5 - i))]);
        OutlineErrorSource[] sources = [new("edge, random", [new RandomEdgeEffect(sigma, 0.5)])];

        var u = OutlineUncertainty.Of(outline, sources, MeasureCatalogue.Width).CombinedStandardUncertainty;

        var expected = sigma * Math.Sqrt((4 * 2.2491 * 2.2491) + (2 * 0.4645 * 0.4645));
        Assert.Equal(expected, u, 0.05 * expected);
    }

    [Fact]
    public void All_measures_with_ten_sources_take_a_few_milliseconds()
    {
        var outline = AnalyticShapes.DSection(18, 8);
        OutlineErrorSource[] sources =
        [
            .. Enumerable.Range(0, 9).Select(i => new OutlineErrorSource($"cause {i}", [new NormalOffsetEffect(0.001 * (i + 1))])),
            new("edge, random", [new RandomEdgeEffect(0.02, 0.3)]),
        ];
        for (var warm = 0; warm < 30; warm++)
        {
            _ = MeasuredOutline.Of(outline, sources);
        }

        var best = Enumerable.Range(0, 20).Min(run =>
        {
            var watch = Stopwatch.StartNew();
            _ = MeasuredOutline.Of(outline, sources);
            return watch.Elapsed.TotalMilliseconds;
        });

        // Some 4 ms by itself, half of it the draws; the limit is for a busy machine and a debug build.
        Assert.InRange(best, 0, 80);
    }

    private static void Check(
        Outline outline, OutlineErrorSource[] sources, IReadOnlyList<Measure> measures, int draws, double largestRatio)
    {
        var budgets = OutlineUncertainty.Of(outline, sources, measures);
        var drawn = OutlineMonteCarlo.Run(outline, sources, measures, draws, 12);
        var complaints = new List<string>();
        for (var k = 0; k < measures.Count; k++)
        {
            var bias = drawn[k].Mean - measures[k].Of(outline);
            var rms = Math.Sqrt((bias * bias) + (drawn[k].StandardDeviation * drawn[k].StandardDeviation));
            var ratio = budgets[k].CombinedStandardUncertainty / rms;
            if (Math.Abs(ratio - 1) > largestRatio)
            {
                complaints.Add($"{measures[k].Name}: budget {budgets[k].CombinedStandardUncertainty:g4}, drawn {rms:g4}, bias {bias:g3}");
            }
        }

        Assert.True(complaints.Count == 0, string.Join("; ", complaints));
    }

    private static Outline Shape(string name) => name == "ellipse" ? AnalyticShapes.Ellipse(20, 14) : AnalyticShapes.DSection(18, 8);
}
