using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Metrology.Measures;

/// <summary>The principal second moments of a shape about its centroid and the direction of its long axis.</summary>
/// <param name="LargestMm4">The larger principal moment, mm⁴: ∫d² over the distance d from the short axis.</param>
/// <param name="SmallestMm4">The smaller principal moment, mm⁴: ∫d² over the distance d from the long axis.</param>
/// <param name="LongAxis">The direction of the long axis from x, counter-clockwise, over −90° to 90°; zero for a shape that has
/// the same moment in every direction.</param>
public sealed record PrincipalAxes(double LargestMm4, double SmallestMm4, Angle LongAxis)
{
    /// <summary>The principal axes of a shape: tan 2θ = 2·Ixy/(Iyy − Ixx) with Ixy = ∫xy.</summary>
    public static PrincipalAxes Of(PolygonMoments moments)
    {
        ArgumentNullException.ThrowIfNull(moments);
        var mean = (moments.IxxMm4 + moments.IyyMm4) / 2;
        var half = (moments.IyyMm4 - moments.IxxMm4) / 2;
        var radius = Math.Sqrt((half * half) + (moments.IxyMm4 * moments.IxyMm4));
        return new(mean + radius, mean - radius, Angle.FromRadians(Math.Atan2(moments.IxyMm4, half) / 2));
    }
}
