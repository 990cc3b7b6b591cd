using NetTopologySuite.Algorithm;
using NetTopologySuite.Algorithm.Distance;
using NetTopologySuite.Densify;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Distance;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Porting.Walls;

/// <summary>The thinnest wall between a port and a keep-out, in the plane of the section.</summary>
/// <param name="WallMm">The wall, mm; negative where the port has broken through, by the depth to which it reaches in.</param>
/// <param name="AtPort">The place on the port's outline.</param>
/// <param name="AtKeepOut">The place on the keep-out's border.</param>
/// <remarks>A wall that leans by φ to the section plane is thinner than its section shows, by cos φ: 3.4 % at 15°, 13.4 % at 30°.</remarks>
public sealed record LeastWall(double WallMm, SectionPoint AtPort, SectionPoint AtKeepOut)
{
    /// <summary>How far apart the places are at which the depth of a break-through is looked for, mm.</summary>
    private const double StepMm = 0.05;

    /// <summary>Finds the thinnest wall.</summary>
    /// <param name="port">The port's outline, mm.</param>
    /// <param name="keepOut">The keep-out in the same frame.</param>
    public static LeastWall Between(Outline port, KeepOutShape keepOut)
    {
        ArgumentNullException.ThrowIfNull(port);
        ArgumentNullException.ThrowIfNull(keepOut);
        var polygon = port.ToPolygon();
        return keepOut switch
        {
            KeepOutCircle circle => ToCircle(polygon.ExteriorRing, circle),
            KeepOutOutline outline when outline.DistanceMm(port[0]) < 0 && !Touches(polygon, outline.Border) => WithinPassage(port, outline),
            _ => Touches(polygon, keepOut.Border) ? BrokenThrough(polygon.ExteriorRing, keepOut.Border) : Apart(polygon.ExteriorRing, keepOut.Border),
        };
    }

    private static LeastWall ToCircle(LineString ring, KeepOutCircle circle)
    {
        var centre = KeepOutShape.ToCoordinate(circle.Centre);
        var foot = DistanceOp.NearestPoints(ring, circle.Border)[0];
        var apart = foot.Distance(centre);
        var sign = PointLocation.IsInRing(centre, ring.Coordinates) ? -1 : 1;
        var (x, y) = apart == 0 ? (0, 0) : ((foot.X - centre.X) / apart, (foot.Y - centre.Y) / apart);
        var reach = sign * circle.RadiusMm;
        return new((sign * apart) - circle.RadiusMm, Place(foot), new(centre.X + (reach * x), centre.Y + (reach * y)));
    }

    private static bool Touches(Polygon port, Geometry border) => port.Intersects(border);

    private static LeastWall Apart(LineString ring, Geometry border)
    {
        var nearest = DistanceOp.NearestPoints(ring, border);
        return new(nearest[0].Distance(nearest[1]), Place(nearest[0]), Place(nearest[1]));
    }

    /// <summary>The place of the keep-out's border that lies deepest within the port.</summary>
    private static LeastWall BrokenThrough(LineString ring, Geometry border)
    {
        var corners = ring.Coordinates;
        LeastWall? deepest = null;
        foreach (var place in Densifier.Densify(border, StepMm).Coordinates.Where(c => PointLocation.IsInRing(c, corners)))
        {
            var foot = new PointPairDistance();
            DistanceToPoint.ComputeDistance(ring, place, foot);
            if (deepest is null || -foot.Distance < deepest.WallMm)
            {
                deepest = new(-foot.Distance, Place(foot[0]), Place(place));
            }
        }

        // A mere touch, with no step of the border inside.
        return deepest ?? Apart(ring, border) with { WallMm = 0 };
    }

    /// <summary>The port lies wholly within the passage: its place deepest in.</summary>
    private static LeastWall WithinPassage(Outline port, KeepOutOutline passage)
    {
        var deepest = port.Points.ToArray().MinBy(passage.DistanceMm);
        var border = DistanceOp.NearestPoints(passage.Border, new Point(KeepOutShape.ToCoordinate(deepest)))[0];
        return new(passage.DistanceMm(deepest), deepest, Place(border));
    }

    private static SectionPoint Place(Coordinate coordinate) => new(coordinate.X, coordinate.Y);
}
