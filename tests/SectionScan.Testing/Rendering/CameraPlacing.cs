using SectionScan.Metrology.Cameras;

namespace SectionScan.Testing.Rendering;

/// <summary>Makes poses from what a person would say: how high, how tilted, which way.</summary>
public static class CameraPlacing
{
    /// <summary>A camera that looks at a point of the target.</summary>
    /// <param name="lookXMm">Where the optical axis meets the target.</param>
    /// <param name="lookYMm">Where the optical axis meets the target.</param>
    /// <param name="distanceMm">From there to the camera.</param>
    /// <param name="tiltDegrees">Between the axis and the vertical.</param>
    /// <param name="azimuthDegrees">The way the axis leans (the camera stands on the other side), from target x toward target y.</param>
    /// <param name="rollDegrees">The turn of the camera about its axis.</param>
    public static Pose LookAt(
        double lookXMm, double lookYMm, double distanceMm, double tiltDegrees, double azimuthDegrees, double rollDegrees)
    {
        var (sinTilt, cosTilt) = Math.SinCos(double.DegreesToRadians(tiltDegrees));
        var (sinAzimuth, cosAzimuth) = Math.SinCos(double.DegreesToRadians(azimuthDegrees));
        var (sinRoll, cosRoll) = Math.SinCos(double.DegreesToRadians(rollDegrees));

        // The shortest turn that brings target z to the axis, then the roll: R = Rz(roll) Rtilt.
        var (ax, ay, az) = (sinTilt * cosAzimuth, sinTilt * sinAzimuth, cosTilt);
        var k = 1 / (1 + az);
        double[] tilt =
        [
            1 - (ax * ax * k), -ax * ay * k, -ax,
            -ax * ay * k, 1 - (ay * ay * k), -ay,
            ax, ay, az,
        ];
        var r = new double[9];
        for (var column = 0; column < 3; column++)
        {
            r[column] = (cosRoll * tilt[column]) - (sinRoll * tilt[3 + column]);
            r[3 + column] = (sinRoll * tilt[column]) + (cosRoll * tilt[3 + column]);
            r[6 + column] = tilt[6 + column];
        }

        var (cx, cy, cz) = (lookXMm - (distanceMm * ax), lookYMm - (distanceMm * ay), -distanceMm * az);
        return FromMatrix(
            r,
            -((r[0] * cx) + (r[1] * cy) + (r[2] * cz)),
            -((r[3] * cx) + (r[4] * cy) + (r[5] * cz)),
            -((r[6] * cx) + (r[7] * cy) + (r[8] * cz)));
    }

    /// <summary>The pose with rotation matrix <paramref name="r"/> (nine numbers, row by row).</summary>
    public static Pose FromMatrix(IReadOnlyList<double> r, double xMm, double yMm, double zMm)
    {
        // By the quaternion: well behaved for half turns too, where the trace formula alone is not.
        var trace = r[0] + r[4] + r[8];
        double w, x, y, z;
        if (trace > 0)
        {
            w = Math.Sqrt(1 + trace) / 2;
            (x, y, z) = ((r[7] - r[5]) / (4 * w), (r[2] - r[6]) / (4 * w), (r[3] - r[1]) / (4 * w));
        }
        else if (r[0] >= r[4] && r[0] >= r[8])
        {
            x = Math.Sqrt(1 + r[0] - r[4] - r[8]) / 2;
            (w, y, z) = ((r[7] - r[5]) / (4 * x), (r[1] + r[3]) / (4 * x), (r[2] + r[6]) / (4 * x));
        }
        else if (r[4] >= r[8])
        {
            y = Math.Sqrt(1 - r[0] + r[4] - r[8]) / 2;
            (w, x, z) = ((r[2] - r[6]) / (4 * y), (r[1] + r[3]) / (4 * y), (r[5] + r[7]) / (4 * y));
        }
        else
        {
            z = Math.Sqrt(1 - r[0] - r[4] + r[8]) / 2;
            (w, x, y) = ((r[3] - r[1]) / (4 * z), (r[2] + r[6]) / (4 * z), (r[5] + r[7]) / (4 * z));
        }

        var length = Math.Sqrt((x * x) + (y * y) + (z * z));
        if (length < 1e-12)
        {
            return new(0, 0, 0, xMm, yMm, zMm);
        }

        var angle = 2 * Math.Atan2(length, w);
        return new(angle * x / length, angle * y / length, angle * z / length, xMm, yMm, zMm);
    }

    /// <summary>The camera for the displayed pixels, given the one for the stored pixels.</summary>
    /// <param name="stored">The camera for the pixels in the file.</param>
    /// <param name="widthPx">Stored width.</param>
    /// <param name="heightPx">Stored height.</param>
    /// <param name="orientation">EXIF orientation: 1, 3, 6 or 8.</param>
    public static Camera Displayed(Camera stored, int widthPx, int heightPx, int orientation)
    {
        ArgumentNullException.ThrowIfNull(stored);
        var (l, r, p) = (stored.Lens, stored.Pose.RotationMatrix(), stored.Pose);
        var (tx, ty, tz) = (p.TranslationXMm, p.TranslationYMm, p.TranslationZMm);
        return orientation switch
        {
            1 => stored,

            // Half a turn: u' = W - 1 - u, v' = H - 1 - v.
            3 => new(
                l with { CentreXPx = widthPx - 1 - l.CentreXPx, CentreYPx = heightPx - 1 - l.CentreYPx, P1 = -l.P1, P2 = -l.P2 },
                FromMatrix([-r[0], -r[1], -r[2], -r[3], -r[4], -r[5], r[6], r[7], r[8]], -tx, -ty, tz)),

            // A quarter clockwise: u' = H - 1 - v, v' = u.
            6 => new(
                new(l.FocalYPx, l.FocalXPx, heightPx - 1 - l.CentreYPx, l.CentreXPx, l.K1, l.K2, l.P2, -l.P1, l.K3),
                FromMatrix([-r[3], -r[4], -r[5], r[0], r[1], r[2], r[6], r[7], r[8]], -ty, tx, tz)),

            // A quarter counter-clockwise: u' = v, v' = W - 1 - u.
            8 => new(
                new(l.FocalYPx, l.FocalXPx, l.CentreYPx, widthPx - 1 - l.CentreXPx, l.K1, l.K2, -l.P2, l.P1, l.K3),
                FromMatrix([r[3], r[4], r[5], -r[0], -r[1], -r[2], r[6], r[7], r[8]], ty, -tx, tz)),
            _ => throw new ArgumentOutOfRangeException(nameof(orientation), orientation, "Rendered photos have orientation 1, 3, 6 or 8."),
        };
    }
}
