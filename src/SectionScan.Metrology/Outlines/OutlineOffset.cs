using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Buffer;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;

namespace SectionScan.Metrology.Outlines;

/// <summary>The parallel curve of an outline: every place moved along its normal by the same length.</summary>
public static class OutlineOffset
{
    /// <summary>Straight pieces in a quarter of the arc that rounds a corner: within d/1200 of the arc.</summary>
    private const int PiecesInQuarter = 32;

    /// <summary>Offsets an outline. Outward, corners are rounded; inward, what is narrower than twice the length closes.</summary>
    /// <param name="outline">The outline, mm.</param>
    /// <param name="lengthMm">Outward positive, inward negative, mm.</param>
    /// <param name="where">What the outline belongs to, for the message of a refusal.</param>
    /// <returns>The offset outline, holes that close outward filled; or <c>offset-closes</c> when nothing or more than one piece is left.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is not finite.</exception>
    public static Result<Outline> By(Outline outline, double lengthMm, string where = "outline")
    {
        ArgumentNullException.ThrowIfNull(outline);
        if (!double.IsFinite(lengthMm))
        {
            throw new ArgumentOutOfRangeException(nameof(lengthMm), lengthMm, "An offset must be a finite number of mm.");
        }

        if (lengthMm == 0)
        {
            return outline;
        }

        // The library thins its input out by a hundredth of the length unless told to keep to it.
        var parameters = new BufferParameters(PiecesInQuarter) { SimplifyFactor = 1e-4 };
        var offset = new BufferOp(outline.ToPolygon(), parameters).GetResultGeometry(lengthMm);
        return offset is Polygon { IsEmpty: false } polygon
            ? Outline.From(polygon.ExteriorRing.Coordinates.Select(c => new SectionPoint(c.X, c.Y)), where)
            : OutlineProblems.OffsetCloses(where, lengthMm, offset.IsEmpty ? 0 : offset.NumGeometries);
    }
}
