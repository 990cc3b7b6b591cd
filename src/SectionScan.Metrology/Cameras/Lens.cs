namespace SectionScan.Metrology.Cameras;

/// <summary>The inside of a camera: how a direction becomes a pixel. The model of Brown (1966) and Conrady (1919) in the form of
/// OpenCV's calib3d documentation, with x' = X/Z, y' = Y/Z, r² = x'² + y'²:
/// x'' = x'(1 + k1 r² + k2 r⁴ + k3 r⁶) + 2 p1 x'y' + p2 (r² + 2x'²), y'' = y'(…) + p1 (r² + 2y'²) + 2 p2 x'y',
/// u = fx x'' + cx, v = fy y'' + cy. Pixel (0, 0) is the centre of the top-left pixel.</summary>
/// <param name="FocalXPx">fx in px, positive.</param>
/// <param name="FocalYPx">fy in px, positive.</param>
/// <param name="CentreXPx">cx in px.</param>
/// <param name="CentreYPx">cy in px.</param>
/// <param name="K1">First radial distortion coefficient.</param>
/// <param name="K2">Second radial distortion coefficient.</param>
/// <param name="P1">First tangential distortion coefficient.</param>
/// <param name="P2">Second tangential distortion coefficient.</param>
/// <param name="K3">Third radial distortion coefficient.</param>
public sealed record Lens(double FocalXPx, double FocalYPx, double CentreXPx, double CentreYPx, double K1, double K2, double P1, double P2, double K3)
{
    /// <summary>From the ideal image plane (x', y' = X/Z, Y/Z) to the pixel.</summary>
    public (double U, double V) Distort(double x, double y)
    {
        var r2 = (x * x) + (y * y);
        var radial = 1 + (r2 * (K1 + (r2 * (K2 + (r2 * K3)))));
        var xd = (x * radial) + (2 * P1 * x * y) + (P2 * (r2 + (2 * x * x)));
        var yd = (y * radial) + (P1 * (r2 + (2 * y * y))) + (2 * P2 * x * y);
        return ((FocalXPx * xd) + CentreXPx, (FocalYPx * yd) + CentreYPx);
    }

    /// <summary>From the pixel to the ideal image plane; the inverse of <see cref="Distort"/> by fixed-point iteration (converges
    /// for every lens whose radial polynomial rises over the image).</summary>
    public (double X, double Y) Undistort(double u, double v)
    {
        var xd = (u - CentreXPx) / FocalXPx;
        var yd = (v - CentreYPx) / FocalYPx;
        var (x, y) = (xd, yd);
        for (var i = 0; i < 20; i++)
        {
            var r2 = (x * x) + (y * y);
            var radial = 1 + (r2 * (K1 + (r2 * (K2 + (r2 * K3)))));
            var nextX = (xd - (2 * P1 * x * y) - (P2 * (r2 + (2 * x * x)))) / radial;
            var nextY = (yd - (P1 * (r2 + (2 * y * y))) - (2 * P2 * x * y)) / radial;
            var change = Math.Abs(nextX - x) + Math.Abs(nextY - y);
            (x, y) = (nextX, nextY);
            if (change < 1e-12)
            {
                break;
            }
        }

        return (x, y);
    }
}
