using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Drawings.Formats;

/// <summary>One line of a DXF drawing, or of a template in the section frame.</summary>
/// <param name="Layer">What the line is for, in a word: the layer it stands on.</param>
/// <param name="Points">The corners in order, mm, y up; 2 or more, or 3 or more when closed; the first is not repeated at the end.</param>
/// <param name="IsClosed">True when a piece leads from the last corner back to the first.</param>
public sealed record DxfPolyline(string Layer, IReadOnlyList<SectionPoint> Points, bool IsClosed)
{
    /// <summary>An outline as one closed polyline.</summary>
    public static DxfPolyline Of(Outline outline, string layer = "outline")
    {
        ArgumentNullException.ThrowIfNull(outline);
        return new(layer, outline.Points.ToArray(), IsClosed: true);
    }
}
