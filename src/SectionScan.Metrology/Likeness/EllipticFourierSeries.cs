using SectionScan.Metrology.Frames;

namespace SectionScan.Metrology.Likeness;

/// <summary>An outline as a sum of ellipses: its elliptic Fourier series over arc length.</summary>
/// <remarks>F. P. Kuhl and C. R. Giardina, "Elliptic Fourier features of a closed contour", Computer Graphics and Image Processing
/// 18 (1982) 236–258: a_n = L/(2n²π²) Σ (Δx/Δs)(cos φ_p − cos φ_(p−1)), b by sine, c and d from y. Exact for a polygon, not a
/// sampled sum.</remarks>
public sealed class EllipticFourierSeries
{
    private readonly EllipticHarmonic[] harmonics;

    private EllipticFourierSeries(SectionPoint mean, EllipticHarmonic[] harmonics)
    {
        Mean = mean;
        this.harmonics = harmonics;
    }

    /// <summary>The mean place along the outline (not the centroid of the area), mm.</summary>
    public SectionPoint Mean { get; }

    /// <summary>The harmonics 1, 2, 3, …; the first stands at index 0.</summary>
    public ReadOnlySpan<EllipticHarmonic> Harmonics => harmonics;

    /// <summary>The area that the series encloses, A = π Σ n (a_n d_n − b_n c_n), mm²; positive when counter-clockwise. It tends to
    /// the polygon's own area as harmonics are added.</summary>
    public double AreaMm2
    {
        get
        {
            var sum = 0.0;
            for (var i = 0; i < harmonics.Length; i++)
            {
                var h = harmonics[i];
                sum += (i + 1) * ((h.A * h.D) - (h.B * h.C));
            }

            return Math.PI * sum;
        }
    }

    /// <summary>The series of a closed polygon, beginning at its first corner.</summary>
    /// <param name="corners">N ≥ 3 corners in mm, first not repeated; repeated neighbours are passed over.</param>
    /// <param name="count">How many harmonics, 1 or more.</param>
    /// <exception cref="ArgumentException">Fewer than three corners, or a polygon without length.</exception>
    public static EllipticFourierSeries Of(ReadOnlySpan<SectionPoint> corners, int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        var lengthMm = corners.Length < 3 ? 0 : LengthMm(corners);
        if (!(lengthMm > 0) || !double.IsFinite(lengthMm))
        {
            throw new ArgumentException(
                $"A closed outline has at least 3 corners and a finite length, not {corners.Length} and {lengthMm} mm.", nameof(corners));
        }

        var harmonics = new EllipticHarmonic[count];
        double along = 0, meanX = 0, meanY = 0;
        for (var i = 0; i < corners.Length; i++)
        {
            var (from, to) = (corners[i], corners[i + 1 == corners.Length ? 0 : i + 1]);
            var side = from.DistanceTo(to);
            if (side == 0)
            {
                continue;
            }

            meanX += side * (from.XMm + to.XMm) / 2;
            meanY += side * (from.YMm + to.YMm) / 2;
            AddSide(harmonics, (to.XMm - from.XMm) / side, (to.YMm - from.YMm) / side, along / lengthMm, (along + side) / lengthMm);
            along += side;
        }

        for (var i = 0; i < count; i++)
        {
            var n = i + 1.0;
            var factor = lengthMm / (2 * n * n * Math.PI * Math.PI);
            var h = harmonics[i];
            harmonics[i] = new(h.A * factor, h.B * factor, h.C * factor, h.D * factor);
        }

        return new(new(meanX / lengthMm, meanY / lengthMm), harmonics);
    }

    /// <summary>The place at a share of the whole length, 0 to 1 from the first corner, mm.</summary>
    public SectionPoint PointAt(double share)
    {
        var (x, y) = (Mean.XMm, Mean.YMm);
        for (var i = 0; i < harmonics.Length; i++)
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * (i + 1) * share);
            x += (harmonics[i].A * cos) + (harmonics[i].B * sin);
            y += (harmonics[i].C * cos) + (harmonics[i].D * sin);
        }

        return new(x, y);
    }

    private static double LengthMm(ReadOnlySpan<SectionPoint> corners)
    {
        var length = corners[^1].DistanceTo(corners[0]);
        for (var i = 1; i < corners.Length; i++)
        {
            length += corners[i - 1].DistanceTo(corners[i]);
        }

        return length;
    }

    private static void AddSide(EllipticHarmonic[] sums, double slopeX, double slopeY, double from, double to)
    {
        var (sinFrom, cosFrom) = Math.SinCos(2 * Math.PI * from);
        var (sinTo, cosTo) = Math.SinCos(2 * Math.PI * to);

        // cos nφ and sin nφ by turning on from n − 1: a tenth of the time of calling SinCos, and 1e-15 over the few dozen steps.
        var (sinA, cosA, sinB, cosB) = (sinFrom, cosFrom, sinTo, cosTo);
        for (var i = 0; i < sums.Length; i++)
        {
            var (cosine, sine) = (cosB - cosA, sinB - sinA);
            var h = sums[i];
            sums[i] = new(h.A + (slopeX * cosine), h.B + (slopeX * sine), h.C + (slopeY * cosine), h.D + (slopeY * sine));
            (sinA, cosA) = ((sinA * cosFrom) + (cosA * sinFrom), (cosA * cosFrom) - (sinA * sinFrom));
            (sinB, cosB) = ((sinB * cosTo) + (cosB * sinTo), (cosB * cosTo) - (sinB * sinTo));
        }
    }
}
