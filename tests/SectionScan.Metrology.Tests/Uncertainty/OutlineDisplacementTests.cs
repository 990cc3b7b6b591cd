using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.Uncertainty;

/// <summary>The area and perimeter of a parallel curve (J. Steiner 1840): A + P·d + π·d², P + 2π·d outward, A − P·d + π·d² inward
/// on a smooth outline. Checks the moves along the normal that every uncertainty budget rests on.</summary>
public sealed class OutlineDisplacementTests
{
    [Theory]
    [InlineData(0.79375, 967.070376676)]
    [InlineData(1, 990.434915288)]
    [InlineData(2, 1107.50707288)]
    [InlineData(-0.79375, 796.180161514)]
    [InlineData(-1, 775.140156029)]
    [InlineData(-2, 676.917554361)]
    public void An_ellipse_moved_along_its_normals_has_Steiners_area(double offset, double area)
    {
        var facts = Moved(AnalyticShapes.Ellipse(20, 14), offset);

        Assert.Equal(area, facts.AreaMm2, area * 5e-5);
    }

    [Fact]
    public void An_ellipse_moved_by_a_thirty_second_of_an_inch_has_Steiners_perimeter() =>
        Assert.Equal(112.634657967, Moved(AnalyticShapes.Ellipse(20, 14), 0.79375).PerimeterMm, 112 * 1.3e-5);

    [Fact]
    public void A_rectangle_moved_inward_keeps_its_sharp_corners()
    {
        // A − P·d + d²·Σtan(θ/2) with four exterior angles of 90°: 36 × 26.
        Assert.Equal(936, Moved(AnalyticShapes.Rectangle(40, 30), -2).AreaMm2, 1e-9);
    }

    [Fact]
    public void A_quarter_percent_of_the_stadiums_area_is_a_uniform_offset_of_21_micrometres()
    {
        var outline = AnalyticShapes.Stadium(14, 12);

        // 0.0212512 = 0.0025·A/P; the rounded ends add Steiner's π·d².
        var expected = 1.0025 + (Math.PI * 0.0212512 * 0.0212512 / 951.752160104);
        Assert.Equal(expected, Moved(outline, 0.0212512).AreaMm2 / MeasureCatalogue.Area.Of(outline), 2e-7);
    }

    private static PolygonFacts Moved(Outline outline, double offset)
    {
        var displacement = new OutlineDisplacement(outline);
        var moved = displacement.Corners.ToArray();
        displacement.Add(new NormalOffsetEffect(offset), 1, moved);
        return new(moved);
    }
}
