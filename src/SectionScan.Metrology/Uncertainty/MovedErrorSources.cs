using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;

namespace SectionScan.Metrology.Uncertainty;

/// <summary>Error sources of an outline that was moved, turned or mirrored: their directions and places go with it.</summary>
public static class MovedErrorSources
{
    /// <summary>The sources in the frame to which <paramref name="transform"/> leads, which must not scale.</summary>
    public static IReadOnlyList<OutlineErrorSource> Moved(this IReadOnlyList<OutlineErrorSource> sources, SimilarityTransform transform)
    {
        ArgumentNullException.ThrowIfNull(sources);
        ArgumentNullException.ThrowIfNull(transform);
        var (sin, cos) = Math.SinCos(transform.Turn.Radians);
        var side = transform.IsMirrored ? -1 : 1;

        // The turning part A = [cos·side, −sin; sin·side, cos]; a linear effect M becomes A·M·Aᵀ.
        var (xx, xy, yx, yy) = (cos * side, -sin, sin * side, cos);
        return [.. sources.Select(source => source with { Effects = [.. source.Effects.Select(Effect)] })];

        OutlineEffect Effect(OutlineEffect effect)
        {
            switch (effect)
            {
                case LinearEffect m:
                    var (a, b, c, d) = ((xx * m.XX) + (xy * m.YX), (xx * m.XY) + (xy * m.YY), (yx * m.XX) + (yy * m.YX), (yx * m.XY) + (yy * m.YY));
                    return new LinearEffect((a * xx) + (b * xy), (a * yx) + (b * yy), (c * xx) + (d * xy), (c * yx) + (d * yy));
                case FacingOffsetEffect f:
                    return f with { DirectionX = (xx * f.DirectionX) + (xy * f.DirectionY), DirectionY = (yx * f.DirectionX) + (yy * f.DirectionY) };
                case LocalOffsetEffect l:
                    var place = transform.Apply(new SectionPoint(l.XMm, l.YMm));
                    return l with { XMm = place.XMm, YMm = place.YMm };
                default:
                    return effect;
            }
        }
    }
}
