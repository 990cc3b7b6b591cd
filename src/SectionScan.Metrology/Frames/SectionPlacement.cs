using SectionScan.Metrology.Quantities;

namespace SectionScan.Metrology.Frames;

/// <summary>Where a section lies on the target: the one mapping between <see cref="TargetPoint"/> (y down) and
/// <see cref="SectionPoint"/> (y up).</summary>
/// <param name="Origin">The place on the target of the section's origin.</param>
/// <param name="Up">The direction of the section's roof on the paper, as a turn from the sheet's own up (toward its top edge),
/// counter-clockwise as seen by the person. Zero: the roof points to the top edge.</param>
public sealed record SectionPlacement(TargetPoint Origin, Angle Up)
{
    /// <summary>From target to section frame.</summary>
    public SectionPoint ToSection(TargetPoint point)
    {
        var (sin, cos) = Math.SinCos(Up.Radians);
        var right = point.XMm - Origin.XMm;
        var up = Origin.YMm - point.YMm;
        return new((right * cos) + (up * sin), (up * cos) - (right * sin));
    }

    /// <summary>From section to target frame; the inverse of <see cref="ToSection"/>.</summary>
    public TargetPoint ToTarget(SectionPoint point)
    {
        var (sin, cos) = Math.SinCos(Up.Radians);
        var right = (point.XMm * cos) - (point.YMm * sin);
        var up = (point.XMm * sin) + (point.YMm * cos);
        return new(Origin.XMm + right, Origin.YMm - up);
    }
}
