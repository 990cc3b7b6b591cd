using NetTopologySuite.Algorithm;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Distance;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Porting.Walls;

/// <summary>A passage of any shape: a water jacket or an oil way as digitised from a sawn casting.</summary>
/// <param name="Outline">Its outline in the section frame of the port being cut, mm.</param>
public sealed record KeepOutOutline(Outline Outline) : KeepOutShape
{
    /// <inheritdoc/>
    public override string Kind => "outline";

    /// <inheritdoc/>
    internal override Geometry Border => Outline.ToPolygon().ExteriorRing;

    /// <inheritdoc/>
    public override double DistanceMm(SectionPoint place)
    {
        var (at, ring) = (ToCoordinate(place), Border);
        var distance = DistanceOp.Distance(ring, new Point(at));
        return PointLocation.IsInRing(at, ring.Coordinates) ? -distance : distance;
    }

    /// <inheritdoc/>
    public override KeepOutShape Moved(double xMm, double yMm) => new KeepOutOutline(Outline.Moved(xMm, yMm));
}
