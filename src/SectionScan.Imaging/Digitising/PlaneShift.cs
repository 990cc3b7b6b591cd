using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Imaging.Digitising;

/// <summary>How an outline would change if the same pixels were seen by another camera, or lay at another height: the linear part,
/// about its centroid, in the section frame.</summary>
internal sealed class PlaneShift
{
    private readonly (PixelPoint Pixel, SectionPoint Place)[] samples;
    private readonly SectionPlacement placement;
    private readonly double thicknessMm;

    /// <summary>Samples the outline.</summary>
    public PlaneShift(IReadOnlyList<TargetPoint> outline, SectionPlacement placement, Camera camera, double thicknessMm)
    {
        this.placement = placement;
        this.thicknessMm = thicknessMm;
        var stride = Math.Max(1, outline.Count / 60);
        samples = [.. Enumerable.Range(0, outline.Count / stride)
            .Select(i => outline[i * stride])
            .Select(p => (camera.Project(p, thicknessMm), placement.ToSection(p)))];
    }

    /// <summary>Under another camera.</summary>
    public LinearEffect Effect(Camera camera) => Effect(camera, thicknessMm);

    /// <summary>Under a camera with the face at a height.</summary>
    public LinearEffect Effect(Camera camera, double heightMm)
    {
        // Least squares of dp = M p + shift over the samples; the shift moves the section and changes no measure.
        var n = samples.Length;
        var moves = Array.ConvertAll(samples, s =>
        {
            var there = placement.ToSection(camera.BackProject(s.Pixel, heightMm));
            return (X: there.XMm - s.Place.XMm, Y: there.YMm - s.Place.YMm);
        });
        var (mx, my) = (samples.Average(s => s.Place.XMm), samples.Average(s => s.Place.YMm));
        var (ux, uy) = (moves.Average(m => m.X), moves.Average(m => m.Y));
        double xx = 0, xy = 0, yy = 0, ax = 0, ay = 0, bx = 0, by = 0;
        for (var i = 0; i < n; i++)
        {
            var (x, y) = (samples[i].Place.XMm - mx, samples[i].Place.YMm - my);
            var (u, v) = (moves[i].X - ux, moves[i].Y - uy);
            xx += x * x;
            xy += x * y;
            yy += y * y;
            ax += u * x;
            ay += u * y;
            bx += v * x;
            by += v * y;
        }

        var det = (xx * yy) - (xy * xy);
        return new(((ax * yy) - (ay * xy)) / det, ((ay * xx) - (ax * xy)) / det, ((bx * yy) - (by * xy)) / det, ((by * xx) - (bx * xy)) / det);
    }
}
