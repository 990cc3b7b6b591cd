using SectionScan.Imaging.Checks;
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

    private const double WeakShareToMention = 0.06;
    private const double WallShareToMention = 0.06;

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
        return new DigitisedSection(
            tag?.Station, scene.IsOpening, scene.ThicknessMm, outline, placement, placed, displayed,
            ErrorSources.Of(edge, placement, scene.Scale, scene.Settings, scene.ThicknessMm, !scene.IsOpening), [.. Warnings(scene, edge, placement, tag)]);
    }

    private static IEnumerable<string> Warnings(Scene scene, FaceEdge edge, SectionPlacement placement, StationTag? tag)
    {
        if (tag is null && !scene.IsOpening && scene.Settings.Scale is null)
        {
            yield return scene.Settings.Up is null
                ? "No station tag lies beside the slice: the station is unknown, and the sheet's top edge is taken for the roof."
                : "No station tag lies beside the slice: the station is unknown.";
        }

        var wall = CheckRules.Wall(scene.Scale.Camera, placement.Origin, scene.ThicknessMm);
        if (wall.Verdict != CheckVerdict.Good)
        {
            yield return $"{wall.Finding} {wall.Remedy}";
        }

        if (Math.Max(edge.WeakShare, Math.Max(edge.ShareOf(EdgeDoubtCause.Faint), edge.ShareOf(EdgeDoubtCause.Unsteady))) is var faint && faint > WeakShareToMention)
        {
            yield return FormattableString.Invariant(
                $"The edge is faint over {100 * faint:0} % of the outline, and the stated uncertainty allows for it; look at the picture before you trust it. Even light from all sides, or a background of another tint, shows the edge better.");
        }

        if (edge.ShareOf(EdgeDoubtCause.WallLikeFace) is var wallLike && wallLike > WallShareToMention)
        {
            yield return FormattableString.Invariant(
                $"Over {100 * wallLike:0} % of the outline the wall below the face cannot be told from the face, and the stated uncertainty allows for it. Light the slice from the other side, lay it nearer the middle of the picture, or cut it thinner.");
        }
    }
}
