namespace SectionScan.Metrology.Cameras;

/// <summary>Where the camera stands to the target: X_cam = R X_target + t, R given as a rotation vector (axis times angle).</summary>
/// <param name="RotationX">x of the rotation vector, rad.</param>
/// <param name="RotationY">y of the rotation vector, rad.</param>
/// <param name="RotationZ">z of the rotation vector, rad.</param>
/// <param name="TranslationXMm">x of t, mm.</param>
/// <param name="TranslationYMm">y of t, mm.</param>
/// <param name="TranslationZMm">z of t, mm.</param>
public sealed record Pose(double RotationX, double RotationY, double RotationZ, double TranslationXMm, double TranslationYMm, double TranslationZMm)
{
    /// <summary>R as nine numbers, row by row (Rodrigues' formula).</summary>
    public double[] RotationMatrix()
    {
        var angle = Math.Sqrt((RotationX * RotationX) + (RotationY * RotationY) + (RotationZ * RotationZ));
        if (angle < 1e-14)
        {
            return [1, -RotationZ, RotationY, RotationZ, 1, -RotationX, -RotationY, RotationX, 1];
        }

        var (x, y, z) = (RotationX / angle, RotationY / angle, RotationZ / angle);
        var (s, c) = Math.SinCos(angle);
        var t = 1 - c;
        return
        [
            c + (x * x * t), (x * y * t) - (z * s), (x * z * t) + (y * s),
            (y * x * t) + (z * s), c + (y * y * t), (y * z * t) - (x * s),
            (z * x * t) - (y * s), (z * y * t) + (x * s), c + (z * z * t),
        ];
    }
}
