using System.Numerics;
using MathNet.Numerics.IntegralTransforms;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Likeness;

namespace SectionScan.Metrology.Tests.Likeness;

/// <summary>Closed forms by integration of the piecewise linear outline (Kuhl and Giardina 1982): for the square of side 2 that
/// begins at (1, 0), a_n = d_n = 8√2/(n²π²) with the signs + + − − − − + + over odd n.</summary>
public class EllipticFourierSeriesTests
{
    private const int TenDigits = 10;

    [Fact]
    public void A_square_has_the_closed_form_of_its_triangle_waves()
    {
        var harmonics = EllipticFourierSeries.Of(Shapes.Polygon((1, 0), (1, 1), (-1, 1), (-1, -1), (1, -1)).Points, 6).Harmonics;

        var first = 8 * Math.Sqrt(2) / (Math.PI * Math.PI);
        Assert.Equal(first, harmonics[0].A, TenDigits);
        Assert.Equal(first, harmonics[0].D, TenDigits);
        Assert.Equal(-first / 9, harmonics[2].A, TenDigits);
        Assert.Equal(first / 9, harmonics[2].D, TenDigits);
        Assert.Equal(-first / 25, harmonics[4].A, TenDigits);
        Assert.Equal(-first / 25, harmonics[4].D, TenDigits);
        foreach (var even in new[] { 1, 3, 5 })
        {
            Assert.Equal(0, Math.Abs(harmonics[even].A) + Math.Abs(harmonics[even].D), TenDigits);
        }

        foreach (var harmonic in harmonics)
        {
            Assert.Equal(0, Math.Abs(harmonic.B) + Math.Abs(harmonic.C), TenDigits);
        }
    }

    [Fact]
    public void A_rectangle_of_40_by_30_from_the_middle_of_its_right_side()
    {
        var harmonics = EllipticFourierSeries.Of(Shapes.Polygon((20, 0), (20, 15), (-20, 15), (-20, -15), (20, -15)).Points, 3).Harmonics;

        // Worked by the same integrals to ten digits with an arbitrary-precision program (mpmath).
        const double Digits = 5e-9;
        Assert.Equal(22.18050554, harmonics[0].A, Digits);
        Assert.Equal(17.68836292, harmonics[0].D, Digits);
        Assert.Equal(-1.367694658, harmonics[2].A, Digits);
        Assert.Equal(2.840047222, harmonics[2].D, Digits);
    }

    [Fact]
    public void An_ellipse_by_arc_length_is_not_a_single_harmonic()
    {
        var harmonics = EllipticFourierSeries.Of(Shapes.Ellipse(20, 14, 20_000).Points, 3).Harmonics;

        // By quadrature over the arc length (mpmath). A polygon of N corners is short of the ellipse by some 10/N² of its size.
        const double PolygonMm = 5e-7;
        Assert.Equal(19.0915345, harmonics[0].A, PolygonMm);
        Assert.Equal(14.58268585, harmonics[0].D, PolygonMm);
        Assert.Equal(0.786761193, harmonics[2].A, PolygonMm);
        Assert.Equal(0.656301878, harmonics[2].D, PolygonMm);
    }

    [Fact]
    public void The_sum_of_the_ellipses_areas_tends_to_the_area_of_the_square()
    {
        var square = Shapes.Polygon((1, 0), (1, 1), (-1, 1), (-1, -1), (1, -1)).Points.ToArray();

        double ErrorWith(int count) => Math.Abs(EllipticFourierSeries.Of(square, count).AreaMm2 - 4);

        // The terms are π n a_n d_n = ±128/(π³ n³), alternating in pairs of odd n: what is left out is below the next pair of terms.
        const double FirstTerm = 128 / (Math.PI * Math.PI * Math.PI);
        foreach (var count in new[] { 15, 31, 63, 127 })
        {
            Assert.InRange(ErrorWith(count), 0, 2 * FirstTerm / Math.Pow(count + 1, 3));
        }
    }

    [Fact]
    public void A_blob_has_the_harmonics_of_a_fast_transform_of_many_places()
    {
        // MathNet.Numerics' FFT of 2^16 places at even steps of arc length: ∫ of the same functions by the trapezium rule, whose error
        // at a corner of the polygon is below h² times the bend.
        const int Places = 65_536;
        const double TrapeziumMm = 1e-6;
        for (var number = 0; number < 5; number++)
        {
            var blob = Shapes.Blob(new Random(number), 300);
            var (x, y) = (new Complex[Places], new Complex[Places]);
            var places = blob.Resampled(Places);
            for (var i = 0; i < Places; i++)
            {
                (x[i], y[i]) = (places[i].XMm, places[i].YMm);
            }

            Fourier.Forward(x, FourierOptions.NoScaling);
            Fourier.Forward(y, FourierOptions.NoScaling);
            var harmonics = EllipticFourierSeries.Of(blob.Points, 20).Harmonics;

            // The transform gives c = (a − ib)/2 of each harmonic, per place.
            for (var n = 1; n <= harmonics.Length; n++)
            {
                var harmonic = harmonics[n - 1];
                Assert.Equal(2 * x[n].Real / Places, harmonic.A, TrapeziumMm);
                Assert.Equal(-2 * x[n].Imaginary / Places, harmonic.B, TrapeziumMm);
                Assert.Equal(2 * y[n].Real / Places, harmonic.C, TrapeziumMm);
                Assert.Equal(-2 * y[n].Imaginary / Places, harmonic.D, TrapeziumMm);
            }
        }
    }

    [Fact]
    public void The_series_draws_the_outline_again()
    {
        var blob = Shapes.Blob(new Random(5), 300);
        var series = EllipticFourierSeries.Of(blob.Points, 60);

        Assert.Equal(blob[0].XMm, series.PointAt(0).XMm, 0.002);
        Assert.Equal(blob[0].YMm, series.PointAt(0).YMm, 0.002);
        var resampled = blob.Resampled(7);
        for (var i = 0; i < 7; i++)
        {
            Assert.InRange(series.PointAt(i / 7.0).DistanceTo(resampled[i]), 0, 0.002); // terms beyond 60 of a smooth shape
        }
    }

    [Fact]
    public void The_mean_place_is_that_of_the_line_and_not_of_the_area()
    {
        // A wire bent to the triangle (0,0) (4,0) (0,3): (4·2 + 5·2)/12 and (5·1.5 + 3·1.5)/12.
        var mean = EllipticFourierSeries.Of(Shapes.Polygon((0, 0), (4, 0), (0, 3)).Points, 1).Mean;

        Assert.Equal(1.5, mean.XMm, TenDigits);
        Assert.Equal(1.0, mean.YMm, TenDigits);
    }

    [Fact]
    public void Too_few_corners_or_none_that_differ_are_refused()
    {
        Assert.Throws<ArgumentException>(() => EllipticFourierSeries.Of([new SectionPoint(0, 0), new SectionPoint(1, 0)], 1));
        Assert.Throws<ArgumentException>(() => EllipticFourierSeries.Of([new SectionPoint(1, 1), new SectionPoint(1, 1), new SectionPoint(1, 1)], 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => EllipticFourierSeries.Of(Shapes.Circle(1).Points, 0));
    }
}
