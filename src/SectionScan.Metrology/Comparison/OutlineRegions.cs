using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Metrology.Comparison;

/// <summary>Sorts places of an outline into its regions.</summary>
public static class OutlineRegions
{
    /// <summary>The region that lies in a direction from the centroid.</summary>
    /// <param name="direction">From x counter-clockwise; any number of turns.</param>
    public static OutlineRegion In(Angle direction)
    {
        var sector = (int)(Math.Floor((direction.Radians / (Math.PI / 4)) + 0.5) % 8);
        return (OutlineRegion)((sector + 8) % 8);
    }

    /// <summary>The direction of a place seen from the centroid, over −180° to 180°.</summary>
    public static Angle DirectionOf(SectionPoint place, SectionPoint centroid) =>
        Angle.FromRadians(Math.Atan2(place.YMm - centroid.YMm, place.XMm - centroid.XMm));
}
