using MathNet.Numerics;
using SectionScan.Metrology.Measures;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.Measures;

/// <summary>The families of port sections against their closed forms. A polygon with its corners on the shape is a little small:
/// every tolerance is that known loss.</summary>
public sealed class SectionFamiliesTests
{
    /// <summary>Arcs of these shapes are stepped no coarser than a regular 360-gon: −5.1e-5 of area, −1.3e-5 of length.</summary>
    private const double AreaLoss = 5.2e-5;
    private const double LengthLoss = 1.3e-5;

    public static TheoryData<string, double, double, double, double, double> Families => new()
    {
        // Area, perimeter, 4A/P, √(4A/π), 4πA/P²: closed forms of the field's shapes.
        { "D-section", 849.4503397, 107.6870418, 31.55255546, 32.88698472, 0.9204940056 },
        { "stadium", 951.752160104, 111.964594301, 34.00189733, 34.81103973, 0.9540525872 },
        { "ellipse", 879.645943005, 107.647379629, 32.68619993, 33.46640106, 0.9539175585 },
        { "superellipse", 1014.28060876, 115.011859356, 35.27568772, 35.93636293, 0.9635688182 },
    };

    [Theory]
    [MemberData(nameof(Families))]
    public void Measures_of_a_family_agree_with_its_closed_form(
        string family, double area, double perimeter, double hydraulic, double equivalent, double circularity)
    {
        var outline = family switch
        {
            "D-section" => AnalyticShapes.DSection(18, 8),
            "stadium" => AnalyticShapes.Stadium(14, 12),
            "ellipse" => AnalyticShapes.Ellipse(20, 14),
            _ => AnalyticShapes.Superellipse(20, 15, 2.5),
        };

        Assert.InRange(MeasureCatalogue.Area.Of(outline) / area, 1 - AreaLoss, 1 + 1e-9);
        Assert.InRange(MeasureCatalogue.Perimeter.Of(outline) / perimeter, 1 - LengthLoss, 1 + 1e-9);
        Assert.Equal(hydraulic, MeasureCatalogue.HydraulicDiameter.Of(outline), hydraulic * AreaLoss);
        Assert.Equal(equivalent, MeasureCatalogue.EquivalentDiameter.Of(outline), equivalent * AreaLoss);
        Assert.Equal(circularity, MeasureCatalogue.Circularity.Of(outline), AreaLoss);
    }

    [Fact]
    public void The_D_section_has_its_width_height_and_centroid()
    {
        var outline = AnalyticShapes.DSection(18, 8);

        Assert.Equal(36, MeasureCatalogue.Width.Of(outline), 36 * AreaLoss);
        Assert.Equal(28, MeasureCatalogue.Height.Of(outline), 28 * AreaLoss);
        var shape = OutlineShape.Of(outline);
        Assert.Equal(2.631132833, shape.Centroid.YMm, 18 * AreaLoss);
        Assert.Equal(0, shape.Centroid.XMm, 1e-9);
    }

    [Fact]
    public void The_ellipse_has_its_second_moments_and_lies_on_its_side()
    {
        var shape = OutlineShape.Of(AnalyticShapes.Ellipse(20, 14));

        // πab³/4 and πa³b/4. A moment loses twice the area's share.
        Assert.Equal(43102.65121, shape.Axes.SmallestMm4, 43102 * 2 * AreaLoss);
        Assert.Equal(87964.5943, shape.Axes.LargestMm4, 87964 * 2 * AreaLoss);
        Assert.Equal(0, shape.Axes.LongAxis.Degrees, 1e-6);
    }

    [Theory]
    [InlineData(64, -0.00160561, -0.000401547)]
    [InlineData(360, -0.0000507688, -0.0000126923)]
    [InlineData(720, -0.0000126923, -0.0000031731)]
    public void A_regular_polygon_loses_as_much_as_its_formula_says(int corners, double areaLoss, double lengthLoss)
    {
        // A = ½NR²·sin(2π/N), P = 2NR·sin(π/N) against the circle; the losses are given to six digits.
        var outline = AnalyticShapes.RegularPolygon(corners, 20);

        Assert.Equal(areaLoss, (MeasureCatalogue.Area.Of(outline) / (Math.PI * 400)) - 1, 6e-9);
        Assert.Equal(lengthLoss, (MeasureCatalogue.Perimeter.Of(outline) / (Math.PI * 40)) - 1, 6e-9);
    }

    [Theory]
    [InlineData(2, 0.7853981634)]
    [InlineData(2.5, 0.8452338406)]
    [InlineData(3, 0.8833193751)]
    [InlineData(4, 0.9270373387)]
    public void A_superellipse_fills_its_box_by_the_gamma_function_formula(double exponent, double share)
    {
        // A = 4ab·Γ(1 + 1/n)²/Γ(1 + 2/n), here also worked out by MathNet.Numerics.
        Assert.Equal(
            share, Math.Pow(SpecialFunctions.Gamma(1 + (1 / exponent)), 2) / SpecialFunctions.Gamma(1 + (2 / exponent)), 1e-9);

        var area = MeasureCatalogue.Area.Of(AnalyticShapes.Superellipse(20, 15, exponent));

        Assert.Equal(share, area / 1200, share * AreaLoss);
    }

    [Theory]
    [InlineData(0.05, 0.014681477, 0.45102681, 0.43588989)]
    [InlineData(0.10, 0.040875277, 0.64350111, 0.60000000)]
    [InlineData(0.15, 0.073874710, 0.79539883, 0.71414284)]
    [InlineData(0.20, 0.111823800, 0.92729522, 0.80000000)]
    [InlineData(0.25, 0.153546210, 1.04719760, 0.86602540)]
    [InlineData(0.30, 0.198168360, 1.15927950, 0.91651514)]
    [InlineData(0.40, 0.293369810, 1.36943840, 0.97979590)]
    [InlineData(0.50, 0.392699080, 1.57079630, 1.00000000)]
    [InlineData(0.60, 0.492028360, 1.77215420, 0.97979590)]
    [InlineData(0.75, 0.631851950, 2.09439510, 0.86602540)]
    public void A_circular_segment_has_the_handbooks_area_arc_and_chord(double depth, double area, double arc, double chord)
    {
        // Tables of circular segments: CRC Standard Mathematical Tables, mensuration of the circle; King & Brater, Handbook of
        // Hydraulics, part-full round pipes (both cited from memory; recomputed from the formulas for h/D).
        const double diameter = 36;
        var outline = AnalyticShapes.CircularSegment(diameter, depth * diameter);

        Assert.Equal(area, MeasureCatalogue.Area.Of(outline) / (diameter * diameter), area * AreaLoss);
        Assert.Equal(arc + chord, MeasureCatalogue.Perimeter.Of(outline) / diameter, (arc + chord) * LengthLoss);
        var widest = depth < 0.5 ? chord : 1;
        Assert.Equal(widest, MeasureCatalogue.Width.Of(outline) / diameter, AreaLoss);
        Assert.Equal(depth, MeasureCatalogue.Height.Of(outline) / diameter, AreaLoss);
    }

    [Theory]
    [InlineData(0.1, 1.0025)]
    [InlineData(0.2, 1.010)]
    [InlineData(0.3, 1.023)]
    [InlineData(0.4, 1.040)]
    [InlineData(0.5, 1.064)]
    [InlineData(0.6, 1.092)]
    [InlineData(0.7, 1.127)]
    [InlineData(0.8, 1.168)]
    [InlineData(0.9, 1.216)]
    public void An_ellipse_has_the_perimeter_that_a_handbook_tabulates(double m, double k)
    {
        // Standard Handbook of Petroleum & Natural Gas Engineering, Geometry, p. 11: P = K·π(a + b) over m = (a − b)/(a + b), to
        // three decimals. Its first line reads 1.002; the exact 1.0025016 rounds to 1.003, so the half between them stands here.
        var (a, b) = (1 + m, 1 - m);

        var perimeter = MeasureCatalogue.Perimeter.Of(AnalyticShapes.Ellipse(a, b, 20000));

        Assert.Equal(k, perimeter / (Math.PI * (a + b)), 0.00051);
    }

    [Fact]
    public void A_flat_ellipse_is_as_long_as_twice_its_long_axis()
    {
        // The table's last line, m = 1: K = 1.273, that is 4/π.
        Assert.Equal(1.273, MeasureCatalogue.Perimeter.Of(AnalyticShapes.Ellipse(2, 1e-6)) / (2 * Math.PI), 0.00051);
    }
}
