using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Metrology.Comparison;

/// <summary>A change of place, turn, size and side within the section frame: mirrored left for right about the y axis first (or not),
/// then scaled and turned about the origin, then moved.</summary>
/// <param name="XMm">The move along x, mm.</param>
/// <param name="YMm">The move along y, mm.</param>
/// <param name="Turn">The turn, counter-clockwise.</param>
/// <param name="Scale">The factor of size, positive.</param>
/// <param name="IsMirrored">True when left and right are exchanged first.</param>
public sealed record SimilarityTransform(double XMm, double YMm, Angle Turn, double Scale, bool IsMirrored)
{
    /// <summary>Leaves everything where it is.</summary>
    public static SimilarityTransform Identity { get; } = new(0, 0, default, 1, false);

    /// <summary>The place to which a point goes.</summary>
    public SectionPoint Apply(SectionPoint point)
    {
        var (sin, cos) = Math.SinCos(Turn.Radians);
        var x = IsMirrored ? -point.XMm : point.XMm;
        return new(
            (Scale * ((x * cos) - (point.YMm * sin))) + XMm,
            (Scale * ((x * sin) + (point.YMm * cos))) + YMm);
    }

    /// <summary>The outline to which an outline goes.</summary>
    public Outline Apply(Outline outline)
    {
        ArgumentNullException.ThrowIfNull(outline);
        return outline.Mapped(Apply);
    }
}
