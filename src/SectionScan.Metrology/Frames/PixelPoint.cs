namespace SectionScan.Metrology.Frames;

/// <summary>A place in a photo as displayed (after EXIF orientation). Unit: px. (0, 0) is the <em>centre</em> of the top-left pixel,
/// x to the right, y down.</summary>
/// <param name="X">Columns from the centre of the leftmost pixel.</param>
/// <param name="Y">Rows from the centre of the topmost pixel.</param>
public readonly record struct PixelPoint(double X, double Y)
{
    /// <summary>The distance to another place, in px.</summary>
    public double DistanceTo(PixelPoint other) => Math.Sqrt(((X - other.X) * (X - other.X)) + ((Y - other.Y) * (Y - other.Y)));
}
