using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Testing.Truth;

/// <summary>The exact shape of one section in a rendered photo.</summary>
/// <param name="Name">Its name in the photo.</param>
/// <param name="Station">The station that its tag names, or null.</param>
/// <param name="Outline">Its true polygon, counter-clockwise, in its own true axes, mm.</param>
/// <param name="Placement">Where those axes lie on the target, true mm.</param>
/// <param name="IsOpening">An opening in a sawn face; else a slice.</param>
/// <param name="ThicknessMm">The height of a slice's face above the paper; 0 for an opening.</param>
/// <param name="WallDraftTangent">Outward move of the wall for each mm below the face.</param>
/// <param name="TagUp">Where its tag's printed up points, as <see cref="SectionPlacement.Up"/> is counted; null without a tag.</param>
/// <param name="AreaMm2">The area.</param>
/// <param name="PerimeterMm">The length of the polygon.</param>
/// <param name="WidthMm">Extent along x in the section's true axes.</param>
/// <param name="HeightMm">Extent along y in the section's true axes.</param>
public sealed record SectionTruth(
    string Name,
    int? Station,
    SectionPoint[] Outline,
    SectionPlacement Placement,
    bool IsOpening,
    double ThicknessMm,
    double WallDraftTangent,
    Angle? TagUp,
    double AreaMm2,
    double PerimeterMm,
    double WidthMm,
    double HeightMm)
{
    /// <summary>How far the tag's up is off from the section's, counter-clockwise; zero without a tag, where the sheet's up (zero) counts.</summary>
    public Angle UpError => (TagUp ?? default) - Placement.Up;

    /// <summary>The polygon where it lies, at the height of the face.</summary>
    public TargetPoint[] PlacedOutline => Array.ConvertAll(Outline, Placement.ToTarget);

    /// <summary>The truth of a polygon, its sizes worked out from its corners.</summary>
    public static SectionTruth Of(
        string name, int? station, SectionPoint[] outline, SectionPlacement placement, bool isOpening, double thicknessMm, double draft, Angle? tagUp)
    {
        ArgumentNullException.ThrowIfNull(outline);
        double perimeter = 0;
        for (var k = 0; k < outline.Length; k++)
        {
            perimeter += outline[k].DistanceTo(outline[(k + 1) % outline.Length]);
        }

        return new(
            name, station, outline, placement, isOpening, thicknessMm, draft, tagUp,
            Math.Abs(PolygonMoments.SignedAreaMm2(outline)), perimeter,
            outline.Max(p => p.XMm) - outline.Min(p => p.XMm), outline.Max(p => p.YMm) - outline.Min(p => p.YMm));
    }
}
