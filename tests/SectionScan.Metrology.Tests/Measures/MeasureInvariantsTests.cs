using CsCheck;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.Measures;

/// <summary>What must hold for every outline.</summary>
public sealed class MeasureInvariantsTests
{
    private const double Relative = 1e-9;

    /// <summary>Star-shaped blobs of 12 to 60 corners, smooth or jagged.</summary>
    private static readonly Gen<Outline> AnyOutline = Gen.Double[5, 30].Array[12, 60].Select(radii =>
        AnalyticShapes.Polygon([.. radii.Select((r, i) =>
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * i / radii.Length);
            return (r * cos, r * sin);
        })]));

    [Fact]
    public void Turning_and_moving_an_outline_leaves_area_perimeter_circularity_and_Feret_diameters_unchanged() =>
        Gen.Select(AnyOutline, Gen.Double[-7, 7], Gen.Double[-1e3, 1e3]).Sample((outline, turn, shift) =>
        {
            var turned = outline.Turned(Angle.FromRadians(turn)).Moved(shift, -shift);
            Measure[] unmoved = [MeasureCatalogue.Area, MeasureCatalogue.Perimeter, MeasureCatalogue.Circularity,
                MeasureCatalogue.MaxFeret, MeasureCatalogue.MinFeret, MeasureCatalogue.LargestMoment, MeasureCatalogue.SmallestMoment];
            foreach (var measure in unmoved)
            {
                var before = measure.Of(outline);
                Assert.Equal(before, measure.Of(turned), Math.Abs(before) * Relative);
            }
        });

    [Fact]
    public void Scaling_an_outline_scales_lengths_once_areas_twice_and_circularity_never() =>
        Gen.Select(AnyOutline, Gen.Double[0.1, 10]).Sample((outline, factor) =>
        {
            var scaled = outline.Scaled(factor);
            foreach (var measure in MeasureCatalogue.All)
            {
                var power = measure.Dimension switch { MeasureDimension.Area => 2, MeasureDimension.Length => 1, _ => 0 };
                var expected = measure.Of(outline) * Math.Pow(factor, power);
                Assert.Equal(expected, measure.Of(scaled), expected * Relative);
            }
        });

    [Fact]
    public void No_outline_is_rounder_than_a_circle_or_thinner_than_its_inscribed_bounds() =>
        AnyOutline.Sample(outline =>
        {
            // Isoperimetric inequality; min Feret ≤ width, height ≤ max Feret; Cauchy: a convex outline's mean width P/π is no more
            // than its largest, so the hull's perimeter is at most π times it.
            Assert.InRange(MeasureCatalogue.Circularity.Of(outline), 0, 1);
            Assert.InRange(
                MeasureCatalogue.Width.Of(outline), MeasureCatalogue.MinFeret.Of(outline) - 1e-9, MeasureCatalogue.MaxFeret.Of(outline) + 1e-9);
            Assert.InRange(
                MeasureCatalogue.Height.Of(outline), MeasureCatalogue.MinFeret.Of(outline) - 1e-9, MeasureCatalogue.MaxFeret.Of(outline) + 1e-9);
            var hull = outline.ToPolygon().ConvexHull();
            Assert.InRange(hull.Length / Math.PI, MeasureCatalogue.MinFeret.Of(outline), MeasureCatalogue.MaxFeret.Of(outline));
        });

    [Fact]
    public void The_mean_width_of_a_convex_outline_is_its_perimeter_over_pi()
    {
        // Cauchy's formula; the ellipse 20, 14: 34.26522516. 180 directions of a smooth periodic function sum to the integral.
        var outline = AnalyticShapes.Ellipse(20, 14);

        var mean = Enumerable.Range(0, 180).Average(i => MeasureCatalogue.Width.Of(outline.Turned(Angle.FromDegrees(i))));

        Assert.Equal(34.26522516, mean, 34 * AnalyticShapes.InscribedAreaError);
    }

    [Fact]
    public void Every_measure_has_a_name_of_its_own_in_the_documents_spelling()
    {
        Assert.Equal(
            ["area", "perimeter", "width", "height", "equivalentDiameter", "hydraulicDiameter", "circularity", "maxFeret", "minFeret"],
            MeasureCatalogue.All.Select(measure => measure.Name));
        Assert.All(MeasureCatalogue.All, measure => Assert.False(string.IsNullOrWhiteSpace(measure.Label)));
    }
}
