using System.Diagnostics;
using CsCheck;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.Comparison;

public sealed class OutlineComparisonTests
{
    private const double SideOfPolygon = 4e-5;

    private static readonly ComparisonOptions Placed = new(AlignmentMethod.AsPlaced);

    [Fact]
    public void A_circle_of_11_lies_1_outside_a_circle_of_10_everywhere()
    {
        var result = OutlineComparison.Compare(AnalyticShapes.Circle(10), AnalyticShapes.Circle(11), Placed);

        // Between corners the polygons' sides are nearer by the sagitta's share, 1 − cos(π/720); at a corner, a side's normal is half
        // a step off the circle's.
        Assert.All(result.Samples, sample => Assert.Equal(1, sample.DeviationMm, SideOfPolygon));
        Assert.Equal(1, result.MeanDeviationMm, 2e-5);
        Assert.Equal(1, result.RmsDeviationMm, 2e-5);
        Assert.Equal(1, result.HausdorffMm, 2e-6);
        Assert.Equal(1, result.Hausdorff95Mm, 2e-5);
        Assert.Equal(0.826446281, result.IntersectionOverUnion, 1e-8);
        Assert.Equal(Math.PI * 21, result.AreaDifferenceMm2, Math.PI * 21 * 2e-5);
        Assert.Equal(0, result.Procrustes.FullDistance, 1e-6);
    }

    [Fact]
    public void A_smaller_measured_outline_has_metal_left_everywhere()
    {
        var result = OutlineComparison.Compare(AnalyticShapes.Circle(11), AnalyticShapes.Circle(10), Placed);

        Assert.All(result.Samples, sample => Assert.Equal(-1, sample.DeviationMm, SideOfPolygon));
    }

    [Fact]
    public void Circles_apart_deviate_along_the_normal_as_trigonometry_says()
    {
        // From the place at angle θ of a circle r 10 along its normal to a circle r 10 about (2, 0): 2cos θ + √(100 − 4sin²θ) − 10.
        var circle = AnalyticShapes.Circle(10);

        var samples = OutlineComparison.Samples(circle, circle.Moved(2, 0));

        Assert.All(samples, sample =>
        {
            var (sin, cos) = Math.SinCos(sample.Direction.Radians);
            // A side's normal is up to 0.25° off the circle's, which moves the meeting by 2·sin θ times that at most.
            Assert.Equal((2 * cos) + Math.Sqrt(100 - (4 * sin * sin)) - 10, sample.DeviationMm, 0.01);
        });
        Assert.Equal(2, samples.Max(sample => sample.DeviationMm), 1e-3);
        Assert.Equal(-2, samples.Min(sample => sample.DeviationMm), 1e-3);
    }

    [Fact]
    public void A_rectangle_grown_by_1_lies_1_outside_up_to_the_corners()
    {
        var samples = OutlineComparison.Samples(AnalyticShapes.Rectangle(40, 30), AnalyticShapes.Rectangle(42, 32));

        Assert.All(samples, sample => Assert.Equal(1, sample.DeviationMm, 1e-9));
    }

    [Fact]
    public void A_rounded_corner_is_as_far_as_it_is_and_not_as_a_normal_would_run_along_it()
    {
        // Corner radius 5: the square corner lies 5·(√2 − 1) = 2.071 outside; a normal beside it would run up to 5 along the wall.
        var rounded = Outline.From(AnalyticShapes.Rectangle(40, 30).Resampled(700).Select(p =>
        {
            var (x, y) = (Math.Abs(p.XMm) - 15, Math.Abs(p.YMm) - 10);
            var size = Math.Sqrt((x * x) + (y * y));
            return x > 0 && y > 0
                ? new SectionPoint(Math.Sign(p.XMm) * (15 + (5 * x / size)), Math.Sign(p.YMm) * (10 + (5 * y / size)))
                : p;
        })).ValueOrThrow();

        var lowest = OutlineComparison.Compare(AnalyticShapes.Rectangle(40, 30), rounded, Placed).Lowest;

        Assert.Equal(-5 * (Math.Sqrt(2) - 1), lowest.DeviationMm, 0.01);
        Assert.Equal(20, Math.Abs(lowest.Reference.XMm), 0.3);
        Assert.Equal(15, Math.Abs(lowest.Reference.YMm), 0.3);
    }

    [Fact]
    public void A_wall_cut_too_far_is_found_on_its_side_with_its_depth()
    {
        var reference = AnalyticShapes.Stadium(14, 12);
        var cut = reference.Mapped(p => p.XMm < -17
            ? new(p.XMm - (0.4 * Math.Min(1, (-17 - p.XMm) / 2)), p.YMm)
            : p);

        var result = OutlineComparison.Compare(reference, cut, Placed);

        Assert.Equal(OutlineRegion.Left, result.Highest.Region);
        Assert.Equal(0.4, result.Highest.DeviationMm, 0.005);
        Assert.InRange(Math.Abs(result.Lowest.DeviationMm), 0, 1e-6);
        var left = result.Regions.Single(region => region.Region == OutlineRegion.Left);
        Assert.Equal(left.HighestMm, result.Highest.DeviationMm);
        Assert.InRange(result.Regions.Single(region => region.Region == OutlineRegion.Right).HighestMm, 0, 1e-6);
        Assert.Equal(111.9646, result.Regions.Sum(region => region.LengthMm), 0.01);
    }

    [Fact]
    public void The_mean_deviation_times_the_perimeter_is_the_area_between()
    {
        // Steiner: A + P·d + π·d² with d = 0.1.
        var result = OutlineComparison.Compare(AnalyticShapes.Stadium(14, 12), AnalyticShapes.Stadium(14.1, 12), Placed);

        Assert.Equal(result.AreaDifferenceMm2, (result.MeanDeviationMm * 111.964594301) + (Math.PI * 0.01), 0.002);
    }

    [Fact]
    public void Turning_both_outlines_changes_no_number_but_the_regions() =>
        Gen.Double[-180, 180].Sample(
            degrees =>
            {
                var (reference, measured) = (AnalyticShapes.DSection(18, 8), AnalyticShapes.Stadium(14, 8).Moved(0.3, 3));
                var turn = Angle.FromDegrees(degrees);

                var straight = OutlineComparison.Compare(reference, measured, new(AlignmentMethod.BestFit));
                var turned = OutlineComparison.Compare(reference.Turned(turn), measured.Turned(turn), new(AlignmentMethod.BestFit));

                // The fit ends at steps of 1e-7 mm.
                Assert.Equal(straight.MeanDeviationMm, turned.MeanDeviationMm, 1e-5);
                Assert.Equal(straight.RmsDeviationMm, turned.RmsDeviationMm, 1e-5);
                Assert.Equal(straight.IntersectionOverUnion, turned.IntersectionOverUnion, 1e-6);
                Assert.Equal(straight.HausdorffMm, turned.HausdorffMm, 1e-5);
                Assert.Equal(straight.DiscreteFrechetMm, turned.DiscreteFrechetMm, 1e-3);
                Assert.Equal(straight.Procrustes.FullDistance, turned.Procrustes.FullDistance, 1e-9);
            },
            iter: 10);

    [Fact]
    public void An_outline_compared_with_itself_differs_nowhere()
    {
        var outline = AnalyticShapes.SixCorners();

        foreach (var method in Enum.GetValues<AlignmentMethod>())
        {
            var result = OutlineComparison.Compare(outline, outline, new(method));

            Assert.InRange(result.RmsDeviationMm, 0, 1e-6);
            Assert.InRange(result.HausdorffMm, 0, 1e-5);
            Assert.InRange(result.DiscreteFrechetMm, 0, 1e-5);
            Assert.Equal(1, result.IntersectionOverUnion, 1e-6);
        }
    }

    [Fact]
    public void A_comparison_of_two_outlines_of_720_corners_takes_milliseconds()
    {
        var (reference, measured) = (AnalyticShapes.DSection(18, 8), AnalyticShapes.DSection(18.3, 7.5).Moved(0.5, 0.2));
        var options = new ComparisonOptions(AlignmentMethod.BestFitWithRotation);
        for (var warm = 0; warm < 20; warm++)
        {
            _ = OutlineComparison.Compare(reference, measured, options);
        }

        var best = Enumerable.Range(0, 10).Min(run =>
        {
            var watch = Stopwatch.StartNew();
            _ = OutlineComparison.Compare(reference, measured, options);
            return watch.Elapsed.TotalMilliseconds;
        });

        // Some 15 ms by itself; the limit is for a busy machine and a debug build.
        Assert.InRange(best, 0, 150);
    }
}
