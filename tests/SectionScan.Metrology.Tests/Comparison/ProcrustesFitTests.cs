using MathNet.Numerics.LinearAlgebra;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Quantities;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.Comparison;

public sealed class ProcrustesFitTests
{
    [Fact]
    public void Two_triangles_have_the_distances_worked_out_by_hand()
    {
        // Centred: z1 = (−1−i, 2−i, −1+2i)/3, z2 = (−2−i, 4−i, −2+2i)/3; ⟨z1, z2⟩ = (18 + 3i)/9, |z1|² = 12/9, |z2|² = 30/9:
        // g = √333/√360.
        var fit = ProcrustesFit.Of([new(0, 0), new(1, 0), new(0, 1)], [new(0, 0), new(2, 0), new(0, 1)]);

        Assert.Equal(0.9617692031, fit.Likeness, 1e-9);
        Assert.Equal(0.2738612788, fit.FullDistance, 1e-9);
        Assert.Equal(0.2774055165, fit.Riemannian.Radians, 1e-9);
        Assert.Equal(0.2765168961, fit.PartialDistance, 1e-9);
        Assert.Equal(9.462322208, Math.Abs(fit.Turn.Degrees), 1e-8);
        Assert.Equal(0.6114916465, fit.RigidSumOfSquaresMm2, 1e-9);
    }

    [Fact]
    public void Random_landmarks_have_the_distance_that_singular_values_give()
    {
        // Kabsch 1976 and Dryden & Mardia (from memory): of the 2 × 2 product of the centred rows at unit size, g is the sum of the singular
        // values, the smaller one counted negative when laying one on the other would take a mirror. MathNet.Numerics finds them.
        var random = new Random(11);
        for (var round = 0; round < 200; round++)
        {
            var count = random.Next(3, 40);
            var (first, second) = (Landmarks(random, count), Landmarks(random, count));

            var fit = ProcrustesFit.Of(first, second);

            var product = Unit(first).TransposeThisAndMultiply(Unit(second));
            var svd = product.Svd();
            var g = svd.S[0] + (Math.Sign(product.Determinant()) * svd.S[1]);
            Assert.Equal(g, fit.Likeness, 1e-12);
            Assert.Equal(Math.Sqrt(1 - (g * g)), fit.FullDistance, 1e-9);

            // Laid by the turn that was found, as little is left as is said.
            var (a, b) = (Centred(first), Centred(second));
            var (sin, cos) = Math.SinCos(fit.Turn.Radians);
            var turned = b * Matrix<double>.Build.DenseOfArray(new[,] { { cos, sin }, { -sin, cos } });
            Assert.Equal(Math.Pow((a - turned).FrobeniusNorm(), 2), fit.RigidSumOfSquaresMm2, 1e-8);
        }

        static SectionPoint[] Landmarks(Random random, int count) =>
            [.. Enumerable.Range(0, count).Select(_ => new SectionPoint(40 * random.NextDouble(), 30 * random.NextDouble()))];

        static Matrix<double> Centred(SectionPoint[] points) => Matrix<double>.Build.Dense(
            points.Length, 2, (i, axis) => axis == 0 ? points[i].XMm - points.Average(p => p.XMm) : points[i].YMm - points.Average(p => p.YMm));

        static Matrix<double> Unit(SectionPoint[] points) => Centred(points) / Centred(points).FrobeniusNorm();
    }

    [Fact]
    public void The_turn_lays_the_second_row_on_the_first()
    {
        SectionPoint[] first = [new(0, 0), new(4, 0), new(0, 3), new(-1, 1)];
        var (sin, cos) = Math.SinCos(0.3);
        var second = Array.ConvertAll(first, p => new SectionPoint((p.XMm * cos) - (p.YMm * sin) + 5, (p.XMm * sin) + (p.YMm * cos) - 2));

        var fit = ProcrustesFit.Of(first, second);

        Assert.Equal(-0.3, fit.Turn.Radians, 1e-12);
        Assert.Equal(1, fit.Likeness, 1e-12);
        Assert.Equal(0, fit.RigidSumOfSquaresMm2, 1e-12);
    }

    [Fact]
    public void An_outline_moved_turned_scaled_and_started_elsewhere_keeps_its_shape()
    {
        var outline = AnalyticShapes.DSection(18, 8);
        var moved = outline.Turned(Angle.FromDegrees(70)).Scaled(1.7).Moved(100, -30);
        var started = Metrology.Outlines.Outline.From([.. moved.Points[300..], .. moved.Points[..300]]).ValueOrThrow();

        // 256 places, of which the nearest start may be half a step off.
        Assert.InRange(ProcrustesFit.OfOutlines(outline, started).FullDistance, 0, 0.01);
        Assert.InRange(ProcrustesFit.OfOutlines(outline, AnalyticShapes.Ellipse(20, 14)).FullDistance, 0.02, 0.5);
    }

    [Fact]
    public void Rows_that_do_not_correspond_or_have_no_shape_are_refused()
    {
        Assert.Throws<ArgumentException>(() => ProcrustesFit.Of([new(0, 0), new(1, 0)], [new(0, 0)]));
        Assert.Throws<ArgumentException>(() => ProcrustesFit.Of([new(1, 1), new(1, 1)], [new(0, 0), new(1, 0)]));
    }
}
