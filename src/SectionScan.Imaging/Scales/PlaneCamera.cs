using OpenCvSharp;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Scales;

/// <summary>Cameras over a plane of which little is known.</summary>
internal static class PlaneCamera
{
    /// <summary>The camera with a given tilt that sees two places of the plane at a given distance from each other. The place whose
    /// pixel is midway between theirs is the origin; the line between them has a given direction.</summary>
    /// <param name="lens">The lens.</param>
    /// <param name="first">One place, px as stored.</param>
    /// <param name="second">The other.</param>
    /// <param name="distanceMm">Their distance, mm.</param>
    /// <param name="directionRad">Where the second lies from the first in the plane: angle from x toward y, rad.</param>
    /// <param name="tilt">Turns about the camera's x and y axes, rad.</param>
    public static Camera Over(
        Lens lens, PixelPoint first, PixelPoint second, double distanceMm, double directionRad, (double AboutX, double AboutY) tilt)
    {
        // With the plane's origin on the ray through the middle pixel, lengths in the plane go with the distance along that ray.
        var (x, y) = lens.Undistort((first.X + second.X) / 2, (first.Y + second.Y) / 2);
        var unturned = At(lens, tilt, 0, (x, y, 1));
        var (a, b) = (unturned.BackProject(first, 0), unturned.BackProject(second, 0));
        var away = distanceMm / a.DistanceTo(b);
        var turn = Math.Atan2(b.YMm - a.YMm, b.XMm - a.XMm) - directionRad;
        return At(lens, tilt, turn, (away * x, away * y, away));
    }

    /// <summary>The nine lenses one standard uncertainty from the prior's mean, each for one independent cause.</summary>
    public static IEnumerable<Lens> LensesAround(LensPrior prior)
    {
        for (var i = 0; i < LensPrior.ParameterCount; i++)
        {
            var z = new double[LensPrior.ParameterCount];
            z[i] = 1;
            yield return prior.At(z);
        }
    }

    private static Camera At(Lens lens, (double AboutX, double AboutY) tilt, double turnRad, (double X, double Y, double Z) translation)
    {
        // R = Rx·Ry·Rz: first the turn in the plane, then the tilts.
        var (sx, cx) = Math.SinCos(tilt.AboutX);
        var (sy, cy) = Math.SinCos(tilt.AboutY);
        var (sz, cz) = Math.SinCos(turnRad);
        double[,] matrix =
        {
            { cy * cz, -cy * sz, sy },
            { (sx * sy * cz) + (cx * sz), (cx * cz) - (sx * sy * sz), -sx * cy },
            { (sx * sz) - (cx * sy * cz), (cx * sy * sz) + (sx * cz), cx * cy },
        };
        Cv2.Rodrigues(matrix, out double[] vector, out _);
        return new(lens, new(vector[0], vector[1], vector[2], translation.X, translation.Y, translation.Z));
    }
}
