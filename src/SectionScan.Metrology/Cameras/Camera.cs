using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Metrology.Cameras;

/// <summary>A lens at a place: the mapping between the target's planes and the photo.</summary>
public sealed class Camera
{
    private readonly double[] r;

    /// <summary>Joins a lens and a pose.</summary>
    public Camera(Lens lens, Pose pose)
    {
        ArgumentNullException.ThrowIfNull(lens);
        ArgumentNullException.ThrowIfNull(pose);
        Lens = lens;
        Pose = pose;
        r = pose.RotationMatrix();
        var (tx, ty, tz) = (pose.TranslationXMm, pose.TranslationYMm, pose.TranslationZMm);

        // The camera's own place in the target frame is -Rᵀt; z points into the paper, so its height is -z.
        FootPoint = new(-((r[0] * tx) + (r[3] * ty) + (r[6] * tz)), -((r[1] * tx) + (r[4] * ty) + (r[7] * tz)));
        HeightMm = (r[2] * tx) + (r[5] * ty) + (r[8] * tz);
        Tilt = Angle.FromRadians(Math.Acos(Math.Clamp(r[8], -1, 1)));
    }

    /// <summary>The lens.</summary>
    public Lens Lens { get; }

    /// <summary>The pose.</summary>
    public Pose Pose { get; }

    /// <summary>The place on the target right under the camera.</summary>
    public TargetPoint FootPoint { get; }

    /// <summary>The height of the camera above the paper, mm.</summary>
    public double HeightMm { get; }

    /// <summary>The angle between the optical axis and the paper's normal; zero when square on.</summary>
    public Angle Tilt { get; }

    /// <summary>Where a point at <paramref name="heightMm"/> above the paper is seen.</summary>
    public PixelPoint Project(TargetPoint point, double heightMm)
    {
        var (x, y, z) = (point.XMm, point.YMm, -heightMm);
        var cx = (r[0] * x) + (r[1] * y) + (r[2] * z) + Pose.TranslationXMm;
        var cy = (r[3] * x) + (r[4] * y) + (r[5] * z) + Pose.TranslationYMm;
        var cz = (r[6] * x) + (r[7] * y) + (r[8] * z) + Pose.TranslationZMm;
        var (u, v) = Lens.Distort(cx / cz, cy / cz);
        return new(u, v);
    }

    /// <summary>The point at <paramref name="heightMm"/> above the paper that is seen at a pixel; the inverse of <see cref="Project"/>.</summary>
    public TargetPoint BackProject(PixelPoint pixel, double heightMm)
    {
        var (x, y) = Lens.Undistort(pixel.X, pixel.Y);

        // Ray direction in the target frame: Rᵀ(x, y, 1); from the camera's place down to z = -height.
        var dx = (r[0] * x) + (r[3] * y) + r[6];
        var dy = (r[1] * x) + (r[4] * y) + r[7];
        var dz = (r[2] * x) + (r[5] * y) + r[8];
        var along = (HeightMm - heightMm) / dz;
        return new(FootPoint.XMm + (along * dx), FootPoint.YMm + (along * dy));
    }

    /// <summary>The scale at a place, as the side of a pixel in mm (root of the area that one pixel covers).</summary>
    public double MillimetresPerPixel(TargetPoint at, double heightMm)
    {
        var here = Project(at, heightMm);
        var right = Project(new(at.XMm + 1, at.YMm), heightMm);
        var down = Project(new(at.XMm, at.YMm + 1), heightMm);
        var px2 = Math.Abs(((right.X - here.X) * (down.Y - here.Y)) - ((right.Y - here.Y) * (down.X - here.X)));
        return 1 / Math.Sqrt(px2);
    }
}
