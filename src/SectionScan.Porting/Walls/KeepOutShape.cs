using NetTopologySuite.Geometries;
using SectionScan.Metrology.Frames;

namespace SectionScan.Porting.Walls;

/// <summary>The shape of what a cut must not reach, in the section frame of the port being cut, mm.</summary>
public abstract record KeepOutShape
{
    /// <summary>What the shape is called in tables: "circle", "line", "outline".</summary>
    public abstract string Kind { get; }

    /// <summary>How far a place of the section is from the shape, mm; negative within a circle or an outline, never negative from a
    /// line.</summary>
    public abstract double DistanceMm(SectionPoint place);

    /// <summary>The same shape moved within the section frame, mm.</summary>
    public abstract KeepOutShape Moved(double xMm, double yMm);

    /// <summary>The shape's border as a geometry for distances: a line, a closed ring, or for a circle its centre.</summary>
    internal abstract Geometry Border { get; }

    internal static Coordinate ToCoordinate(SectionPoint point) => new(point.XMm, point.YMm);
}
