using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Distance;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Walls;

/// <summary>A wall as read with a caliper or wall gauge at a place of the port's outline, square to the wall.</summary>
/// <param name="Name">What lies behind the wall, or where it was read, in the person's words.</param>
/// <param name="Place">The place on the outline of the port as it was when the wall was read, mm.</param>
/// <param name="WallMm">What was read, mm.</param>
/// <param name="LimitMm">The wall below which caution is due, mm.</param>
/// <param name="Note">The person's note; may be empty.</param>
public sealed record WallReading(string Name, SectionPoint Place, Estimate WallMm, double LimitMm, string Note)
{
    /// <summary>A place farther from the outline than this is taken for a slip of the pen, mm.</summary>
    public const double FarthestMm = 2;

    /// <summary>The far side of the wall as a keep-out: the place that lies the reading's length along the outward normal from where the
    /// outline passes the reading's place.</summary>
    /// <param name="present">The outline of the port as it was when the wall was read, same frame.</param>
    /// <returns>The keep-out, a single place; or <c>reading-off-the-outline</c>.</returns>
    public Result<KeepOut> FarSide(Outline present)
    {
        ArgumentNullException.ThrowIfNull(present);
        var ring = present.ToPolygon().ExteriorRing;
        var at = DistanceOp.NearestPoints(ring, new Point(KeepOutShape.ToCoordinate(Place)))[0];
        var foot = new SectionPoint(at.X, at.Y);
        if (foot.DistanceTo(Place) > FarthestMm)
        {
            return PortWallsProblems.ReadingOffTheOutline(Name, foot.DistanceTo(Place));
        }

        var (normalX, normalY) = Normal(present, foot);
        var farSide = new SectionPoint(foot.XMm + (WallMm.Value * normalX), foot.YMm + (WallMm.Value * normalY));
        return new KeepOut(
            Name.Length > 0 ? Name : "wall read", new KeepOutCircle(farSide, 0), WallMm.StandardUncertainty, LimitMm, KeepOutSource.Caliper, Note);
    }

    // Over two millimetres and not from one edge: a short edge of a digitised outline leans by its noise.
    private static (double X, double Y) Normal(Outline outline, SectionPoint foot)
    {
        const double ReachMm = 1;
        double x = 0, y = 0;
        for (var i = 0; i < outline.Count; i++)
        {
            var (from, to) = (outline[i], outline[i + 1]);
            var middle = new SectionPoint((from.XMm + to.XMm) / 2, (from.YMm + to.YMm) / 2);
            var weight = Math.Max(0, 1 - (middle.DistanceTo(foot) / (ReachMm + from.DistanceTo(to))));
            x += weight * (to.YMm - from.YMm);
            y += weight * (from.XMm - to.XMm);
        }

        var length = double.Hypot(x, y);
        return (x / length, y / length);
    }
}
