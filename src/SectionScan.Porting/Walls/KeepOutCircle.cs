using NetTopologySuite.Geometries;
using SectionScan.Metrology.Frames;

namespace SectionScan.Porting.Walls;

/// <summary>A round passage, such as a drilled oil way or a stud hole that crosses the section squarely.</summary>
/// <param name="Centre">Its middle, mm.</param>
/// <param name="RadiusMm">Its radius, mm; zero is a single place.</param>
public sealed record KeepOutCircle(SectionPoint Centre, double RadiusMm) : KeepOutShape
{
    /// <inheritdoc/>
    public override string Kind => "circle";

    /// <inheritdoc/>
    internal override Geometry Border => new Point(ToCoordinate(Centre));

    /// <inheritdoc/>
    public override double DistanceMm(SectionPoint place) => Centre.DistanceTo(place) - RadiusMm;

    /// <inheritdoc/>
    public override KeepOutShape Moved(double xMm, double yMm) => this with { Centre = new(Centre.XMm + xMm, Centre.YMm + yMm) };
}
