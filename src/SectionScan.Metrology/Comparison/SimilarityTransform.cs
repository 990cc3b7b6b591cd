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

    /// <summary>The mirror image about a line.</summary>
    /// <remarks>A mirror image about a line at φ is one about the y axis, then a turn by 2φ − π.</remarks>
    public static SimilarityTransform MirrorAbout(SectionLine axis)
    {
        ArgumentNullException.ThrowIfNull(axis);
        var about = new SimilarityTransform(0, 0, Angle.FromRadians((2 * axis.DirectionRadians) - Math.PI), 1, true);
        var image = about.Apply(axis.Middle);
        return about with { XMm = axis.Middle.XMm - image.XMm, YMm = axis.Middle.YMm - image.YMm };
    }

    /// <summary>This, then another that mirrors nothing.</summary>
    /// <exception cref="ArgumentException">The other mirrors.</exception>
    public SimilarityTransform Then(SimilarityTransform next)
    {
        ArgumentNullException.ThrowIfNull(next);
        if (next.IsMirrored)
        {
            throw new ArgumentException("A mirror image comes first.", nameof(next));
        }

        var place = next.Apply(new SectionPoint(XMm, YMm));
        return new(place.XMm, place.YMm, Turn + next.Turn, Scale * next.Scale, IsMirrored);
    }

    /// <summary>The way back of one that mirrors nothing.</summary>
    /// <exception cref="InvalidOperationException">It mirrors.</exception>
    public SimilarityTransform Inverse()
    {
        if (IsMirrored)
        {
            throw new InvalidOperationException("The way back of a mirror image is none of this kind.");
        }

        var back = new SimilarityTransform(0, 0, -Turn, 1 / Scale, false);
        var place = back.Apply(new SectionPoint(XMm, YMm));
        return back with { XMm = -place.XMm, YMm = -place.YMm };
    }

    /// <summary>The line to which a line goes.</summary>
    public SectionLine Apply(SectionLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return new(Apply(line.From), Apply(line.To));
    }

    /// <summary>The outline to which an outline goes.</summary>
    public Outline Apply(Outline outline)
    {
        ArgumentNullException.ThrowIfNull(outline);
        return outline.Mapped(Apply);
    }
}
