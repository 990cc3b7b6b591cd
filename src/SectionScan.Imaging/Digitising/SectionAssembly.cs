using SectionScan.Imaging.Edges;
using SectionScan.Imaging.Photos;
using SectionScan.Imaging.Targets;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Digitising;

/// <summary>From a measured edge to a section in its own frame with its errors.</summary>
internal static class SectionAssembly
{
    private const int FewestPoints = 360;
    private const int MostPoints = 2000;
    private const double PointSpacingMm = 0.12;

    /// <summary>Assembles the section.</summary>
    public static Result<DigitisedSection> Assemble(Scene scene, FaceEdge edge, StationTag? tag)
    {
        // Corners for the area's own centroid; the target frame counts y down, so the sign of y is turned for the moments.
        SectionPoint[] corners = [.. edge.Points.Select(p => new SectionPoint(p.XMm, -p.YMm))];
        var centroid = PolygonMoments.Of(corners).Centroid;
        var up = tag is not null ? Angle.FromRadians(tag.UpRad) : scene.Settings.Up ?? default;
        var placement = new SectionPlacement(new(centroid.XMm, -centroid.YMm), up);
        var perimeter = edge.Points.Select((p, i) => p.DistanceTo(edge.Points[(i + 1) % edge.Points.Length])).Sum();
        var count = Math.Clamp((int)Math.Round(perimeter / PointSpacingMm), FewestPoints, MostPoints);
        if (!Outline.From(edge.Points.Select(placement.ToSection), scene.Path).TryGet(out var dense, out var problem)
            || !Outline.From(dense.Resampled(count), scene.Path).TryGet(out var outline, out problem))
        {
            return problem;
        }

        // Resampling moves the centroid by nanometres; the frame's origin is the outline's own.
        var shift = PolygonMoments.Of(outline.Points).Centroid;
        placement = new(placement.ToTarget(shift), up);
        outline = outline.Moved(-shift.XMm, -shift.YMm);
        TargetPoint[] placed = [.. outline.Points.ToArray().Select(placement.ToTarget)];
        if (!scene.IsOpening && scene.Settings.Shrinkage is { } shrinkage)
        {
            // The port's size; where the slice lies and what the photo shows stay the slice's.
            outline = outline.Scaled(shrinkage.Enlargement);
        }

        var photo = scene.Photo;
        PixelPoint[] displayed = [.. placed.Select(p => StoredPixels.ToDisplayed(
            scene.Scale.Camera.Project(p, scene.ThicknessMm), photo.QuarterTurns, photo.Colour.Width, photo.Colour.Height))];
        var sources = ErrorSources.Of(edge, placement, scene.Scale, scene.Settings, scene.ThicknessMm, !scene.IsOpening);
        return new DigitisedSection(
            tag?.Station, scene.IsOpening, scene.ThicknessMm, outline, placement, placed, displayed,
            sources, [.. SectionCautions.Of(scene, edge, placement, tag, outline, sources)]);
    }
}
