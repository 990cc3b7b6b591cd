using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Porting.Corrections;

/// <summary>Effects of causes of error, taken along when an outline is moved or turned in its frame.</summary>
internal static class EffectMotion
{
    public static OutlineEffect Moved(OutlineEffect effect, double xMm, double yMm) =>
        effect is LocalOffsetEffect local ? local with { XMm = local.XMm + xMm, YMm = local.YMm + yMm } : effect;

    public static OutlineEffect Turned(OutlineEffect effect, Angle by)
    {
        var (sin, cos) = Math.SinCos(by.Radians);
        switch (effect)
        {
            case LinearEffect m:
                // R·M·Rᵀ
                var (a, b) = ((cos * m.XX) - (sin * m.YX), (cos * m.XY) - (sin * m.YY));
                var (c, d) = ((sin * m.XX) + (cos * m.YX), (sin * m.XY) + (cos * m.YY));
                return new LinearEffect((a * cos) - (b * sin), (a * sin) + (b * cos), (c * cos) - (d * sin), (c * sin) + (d * cos));
            case FacingOffsetEffect facing:
                return facing with
                {
                    DirectionX = (facing.DirectionX * cos) - (facing.DirectionY * sin),
                    DirectionY = (facing.DirectionX * sin) + (facing.DirectionY * cos),
                };
            case LocalOffsetEffect local:
                return local with { XMm = (local.XMm * cos) - (local.YMm * sin), YMm = (local.XMm * sin) + (local.YMm * cos) };
            default:
                return effect;
        }
    }
}
