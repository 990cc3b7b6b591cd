using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Targets;

/// <summary>A station tag seen on the target.</summary>
/// <param name="Station">The station's number.</param>
/// <param name="Corners">Its four corners on the plane of the paper, mm: top left, top right, bottom right, bottom left as printed.</param>
internal sealed record StationTag(int Station, TargetPoint[] Corners)
{
    // 1.5 mm of white is cut out with the tag; a little more for scissors.
    private const double BorderMm = 2.2;

    /// <summary>The tag's middle, mm.</summary>
    public TargetPoint Centre => new(Corners.Average(c => c.XMm), Corners.Average(c => c.YMm));

    /// <summary>The turn from the sheet's up to the tag's printed up, counter-clockwise, rad.</summary>
    public double UpRad
    {
        get
        {
            // From the bottom edge's middle to the top edge's middle; y of the target points down.
            var dx = Corners[0].XMm + Corners[1].XMm - Corners[2].XMm - Corners[3].XMm;
            var dy = -(Corners[0].YMm + Corners[1].YMm - Corners[2].YMm - Corners[3].YMm);
            return Math.Atan2(-dx, dy);
        }
    }

    /// <summary>The tag with its white border, as a polygon.</summary>
    public TargetPoint[] Footprint()
    {
        var (centre, grow) = (Centre, 1 + (BorderMm / 5));
        return Array.ConvertAll(Corners, c => new TargetPoint(
            centre.XMm + ((c.XMm - centre.XMm) * grow), centre.YMm + ((c.YMm - centre.YMm) * grow)));
    }
}
