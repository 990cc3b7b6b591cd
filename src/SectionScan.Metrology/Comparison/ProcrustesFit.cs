using System.Numerics;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Metrology.Comparison;

/// <summary>How well one row of corresponding points can be laid on another by moving, turning and scaling.</summary>
/// <param name="Likeness">g = |⟨z₁, z₂⟩| of the centred points at unit size, as complex numbers: 1 for the same shape.</param>
/// <param name="Turn">The turn of the second row that lays it best on the first.</param>
/// <param name="RigidSumOfSquaresMm2">What is left when the second row is moved and turned but not scaled, mm².</param>
/// <remarks>D. G. Kendall, "Shape manifolds, Procrustean metrics and complex projective spaces", 1984; I. L. Dryden, K. V. Mardia,
/// "Statistical shape analysis" (both cited from memory).</remarks>
public sealed record ProcrustesFit(double Likeness, Angle Turn, double RigidSumOfSquaresMm2)
{
    /// <summary>Points around an outline for <see cref="OfOutlines"/>.</summary>
    private const int Places = 256;

    /// <summary>The full Procrustes distance, √(1 − g²): 0 for the same shape, at most 1, without unit.</summary>
    public double FullDistance => Math.Sqrt(Math.Max(0, 1 - (Likeness * Likeness)));

    /// <summary>The partial Procrustes distance, √(2 − 2g), without unit.</summary>
    public double PartialDistance => Math.Sqrt(Math.Max(0, 2 - (2 * Likeness)));

    /// <summary>The Riemannian distance, ρ = acos g.</summary>
    public Angle Riemannian => Angle.FromRadians(Math.Acos(Math.Min(1, Likeness)));

    /// <summary>The fit of two rows of the same number of points, which correspond one to one; no mirroring.</summary>
    /// <exception cref="ArgumentException">The numbers differ, there are fewer than two points, or all points of a row coincide.</exception>
    public static ProcrustesFit Of(ReadOnlySpan<SectionPoint> first, ReadOnlySpan<SectionPoint> second)
    {
        if (first.Length != second.Length || first.Length < 2)
        {
            throw new ArgumentException($"Rows of {first.Length} and {second.Length} points do not correspond.", nameof(second));
        }

        return Of(Centred(first), Centred(second), 0);
    }

    /// <summary>The fit of two outlines: 256 points each at even steps of arc length, with the start of the second that fits best.</summary>
    public static ProcrustesFit OfOutlines(Outline first, Outline second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        var (z1, z2) = (Centred(first.Resampled(Places)), Centred(second.Resampled(Places)));
        var best = Enumerable.Range(0, Places).MaxBy(start => Product(z1, z2, start).Magnitude);
        return Of(z1, z2, best);
    }

    private static ProcrustesFit Of(Complex[] z1, Complex[] z2, int start)
    {
        var (square1, square2) = (Square(z1), Square(z2));
        if (square1 == 0 || square2 == 0)
        {
            throw new ArgumentException("Points that all coincide have no shape.");
        }

        var product = Product(z1, z2, start);
        return new(
            product.Magnitude / Math.Sqrt(square1 * square2),
            Angle.FromRadians(product.Phase),
            Math.Max(0, square1 + square2 - (2 * product.Magnitude)));
    }

    private static Complex Product(Complex[] z1, Complex[] z2, int start)
    {
        var sum = Complex.Zero;
        for (var i = 0; i < z1.Length; i++)
        {
            var j = i + start;
            sum += z1[i] * Complex.Conjugate(z2[j < z2.Length ? j : j - z2.Length]);
        }

        return sum;
    }

    private static double Square(Complex[] z) => z.Sum(p => (p.Real * p.Real) + (p.Imaginary * p.Imaginary));

    private static Complex[] Centred(ReadOnlySpan<SectionPoint> points)
    {
        var z = new Complex[points.Length];
        var mean = Complex.Zero;
        for (var i = 0; i < z.Length; i++)
        {
            z[i] = new(points[i].XMm, points[i].YMm);
            mean += z[i] / z.Length;
        }

        return Array.ConvertAll(z, p => p - mean);
    }
}
