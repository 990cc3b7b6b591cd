using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Comparison;

/// <summary>Signed normal deviation of a measured outline from places of a reference.</summary>
/// <param name="measured">The measured outline, in the frame of the places.</param>
/// <remarks>The deviation is measured along the reference's outward normal, from the place to where the normal meets the measured wall.
/// At corners, and where the walls run away from each other, a normal may run along the other wall or miss it: where the meeting is
/// farther than 1.25 times the nearest place (the walls are more than 37° out of parallel, cos 37° = 1/1.25), the distance to the
/// nearest place counts. The sign says on which side of the measured wall the place lies, and never depends on the normal.</remarks>
public sealed class SignedDeviation(Outline measured)
{
    private const double FarthestMeeting = 1.25;

    private readonly EdgeIndex edges = new(measured.Points, isClosed: true);

    /// <summary>The deviation at a place whose outward unit normal is (nx, ny), and the place on the measured wall.</summary>
    public (double DeviationMm, SectionPoint Measured) At(SectionPoint place, double nx, double ny)
    {
        var nearest = edges.Nearest(place);
        var (isInside, outward, inward) = Meetings(place, nx, ny);
        var meeting = isInside ? outward : inward;
        var sign = isInside ? 1 : -1;
        return meeting <= FarthestMeeting * nearest.DistanceMm
            ? (sign * meeting, new(place.XMm + (sign * meeting * nx), place.YMm + (sign * meeting * ny)))
            : (sign * nearest.DistanceMm, nearest.Point);
    }

    /// <summary>How far the line along the normal runs outward and inward until it meets the measured wall; an odd number of meetings
    /// outward tells that the place is inside.</summary>
    private (bool IsInside, double Outward, double Inward) Meetings(SectionPoint place, double nx, double ny)
    {
        var (isInside, outward, inward) = (false, double.PositiveInfinity, double.PositiveInfinity);
        var points = measured.Points;
        var (fromAlong, fromAside) = Seen(points[^1]);
        foreach (var point in points)
        {
            var (toAlong, toAside) = Seen(point);
            if (fromAside <= 0 != toAside <= 0)
            {
                var along = fromAlong + (fromAside / (fromAside - toAside) * (toAlong - fromAlong));
                if (along > 0)
                {
                    isInside = !isInside;
                    outward = Math.Min(outward, along);
                }
                else
                {
                    inward = Math.Min(inward, -along);
                }
            }

            (fromAlong, fromAside) = (toAlong, toAside);
        }

        return (isInside, outward, inward);

        (double Along, double Aside) Seen(SectionPoint point)
        {
            var (x, y) = (point.XMm - place.XMm, point.YMm - place.YMm);
            return ((x * nx) + (y * ny), (y * nx) - (x * ny));
        }
    }
}
