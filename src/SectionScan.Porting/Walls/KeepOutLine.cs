using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Distance;
using SectionScan.Metrology.Frames;

namespace SectionScan.Porting.Walls;

/// <summary>An open line of straight pieces that a cut must not reach: the floor of a spring pocket, an outer face of the casting.</summary>
/// <param name="Points">Two or more places in order, mm.</param>
public sealed record KeepOutLine(IReadOnlyList<SectionPoint> Points) : KeepOutShape
{
    /// <inheritdoc/>
    public override string Kind => "line";

    /// <inheritdoc/>
    internal override Geometry Border => new LineString([.. Points.Select(ToCoordinate)]);

    /// <inheritdoc/>
    public override double DistanceMm(SectionPoint place) => DistanceOp.Distance(Border, new Point(ToCoordinate(place)));

    /// <inheritdoc/>
    public override KeepOutShape Moved(double xMm, double yMm) =>
        new KeepOutLine([.. Points.Select(p => new SectionPoint(p.XMm + xMm, p.YMm + yMm))]);
}
