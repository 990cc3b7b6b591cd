using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Fairing;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Porting.TargetShapes;

/// <summary>A smooth line close to the own outline, at even steps, on whose normals everything else is measured: offsets along the normals
/// of a rough line would cross.</summary>
internal sealed class FairBase
{
    /// <summary>A power of two, for the filter; 0.1 mm apart on a usual port.</summary>
    public const int Places = 1024;

    private readonly SectionPoint[] points;
    private readonly (double X, double Y)[] normals;

    public FairBase(Outline own, double fairingMm)
    {
        // Half the wavelength: the base may follow what fairing takes out of the target, but no texture of the surface.
        const double SmallestMm = 4;
        var even = own.Resampled(Places);
        SpacingMm = Enumerable.Range(0, Places).Average(i => even[i].DistanceTo(even[(i + 1) % Places]));
        var smoothing = new PeriodicFairing(Places, SpacingMm, Math.Max(SmallestMm, fairingMm / 2));
        var (x, y) = (smoothing.Of([.. even.Select(p => p.XMm)]), smoothing.Of([.. even.Select(p => p.YMm)]));
        points = [.. x.Zip(y, (px, py) => new SectionPoint(px, py))];
        normals = new (double, double)[Places];
        for (var i = 0; i < Places; i++)
        {
            var (before, after) = (points[(i + Places - 1) % Places], points[(i + 1) % Places]);
            var length = before.DistanceTo(after);
            normals[i] = ((after.YMm - before.YMm) / length, (before.XMm - after.XMm) / length);
        }

        var centroid = PolygonMoments.Of(own.Points).Centroid;
        Directions = Array.ConvertAll(points, point => OutlineRegions.DirectionOf(point, centroid));
        OwnMm = OffsetsTo(own);
    }

    public double SpacingMm { get; }

    /// <summary>The direction of each place from the own centroid.</summary>
    public Angle[] Directions { get; }

    /// <summary>Where the own wall lies on each normal, mm.</summary>
    public double[] OwnMm { get; }

    public double NormalX(int i) => normals[i].X;

    public double NormalY(int i) => normals[i].Y;

    /// <summary>The place at an offset along a normal, outward positive.</summary>
    public SectionPoint At(int i, double offsetMm) =>
        new(points[i].XMm + (offsetMm * normals[i].X), points[i].YMm + (offsetMm * normals[i].Y));

    /// <summary>The corners of the line at such offsets.</summary>
    public SectionPoint[] At(double[] offsetsMm) => [.. offsetsMm.Select((offset, i) => At(i, offset))];

    /// <summary>Where another wall lies on each normal, mm.</summary>
    public double[] OffsetsTo(Outline wall)
    {
        var deviation = new SignedDeviation(wall);
        return [.. Enumerable.Range(0, Places).Select(i => deviation.At(points[i], normals[i].X, normals[i].Y).DeviationMm)];
    }
}
