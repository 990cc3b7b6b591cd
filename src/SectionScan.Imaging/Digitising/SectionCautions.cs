using SectionScan.Imaging.Checks;
using SectionScan.Imaging.Edges;
using SectionScan.Imaging.Targets;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Imaging.Digitising;

/// <summary>What a person should know of a section that was measured, each with a stable code.</summary>
public static class SectionCautions
{
    /// <summary>The code of a missing station tag.</summary>
    public const string NoTag = "no-station-tag";

    /// <summary>The code of a wall whose lean the photo does not tell.</summary>
    public const string WallLeanUnknown = "wall-lean-unknown";

    // From here on a cause that the next photo can mend makes most of the interval: twice what all other causes make it. Ours; of the 28
    // slices of the sample photos, with their lens profile, it marks three (areas to ±0.8, ±2.4 and ±2.5 %, where ±0.4 % is usual).
    private const double TimesAsWide = 2;

    private const double WeakShareToMention = 0.06;
    private const double WallShareToMention = 0.06;

    /// <summary>Looks at a section.</summary>
    internal static IEnumerable<Problem> Of(
        Scene scene, FaceEdge edge, SectionPlacement placement, StationTag? tag, Outline outline, IReadOnlyList<OutlineErrorSource> sources)
    {
        if (tag is null && !scene.IsOpening && scene.Settings.Scale is null)
        {
            yield return Told(
                NoTag,
                scene.Settings.Up is null
                    ? "No station tag lies beside the slice: the station is unknown, and the sheet's top edge is taken for the roof."
                    : "No station tag lies beside the slice: the station is unknown.",
                "Lay the tag of its station beside it, its up toward the roof.");
        }

        var wall = CheckRules.Wall(scene.Scale.Camera, placement.Origin, scene.ThicknessMm);
        if (wall.Verdict != CheckVerdict.Good)
        {
            yield return Told(wall.Code, wall.Finding, wall.Remedy);
        }

        if (Math.Max(edge.WeakShare, Math.Max(edge.ShareOf(EdgeDoubtCause.Faint), edge.ShareOf(EdgeDoubtCause.Unsteady))) is var faint && faint > WeakShareToMention)
        {
            yield return Told(
                "edge-faint",
                FormattableString.Invariant($"The edge is faint over {100 * faint:0} % of the outline, and the stated uncertainty allows for it; look at the picture before you trust it."),
                "Even light from all sides, or a background of another tint, shows the edge better.");
        }

        if (edge.ShareOf(EdgeDoubtCause.WallLikeFace) is var wallLike && wallLike > WallShareToMention)
        {
            yield return Told(
                "wall-like-face",
                FormattableString.Invariant($"Over {100 * wallLike:0} % of the outline the wall below the face cannot be told from the face, and the stated uncertainty allows for it."),
                "Light the slice from the other side, lay it nearer the middle of the picture, or cut it thinner.");
        }

        if (LeanOf(outline, sources) is { } lean)
        {
            yield return lean;
        }
    }

    /// <summary>The caution where a wall's unknown lean makes the area's interval at least twice what all other causes make it.</summary>
    /// <param name="outline">The outline, mm.</param>
    /// <param name="sources">Its causes of error.</param>
    /// <returns>The caution, or null where the lean hardly counts.</returns>
    internal static Problem? LeanOf(Outline outline, IReadOnlyList<OutlineErrorSource> sources)
    {
        var area = MeasuredOutline.Of(outline, sources, [MeasureCatalogue.Area])[MeasureCatalogue.Area];
        var lean = area.Budget.Rows.FirstOrDefault(row => row.Source == ErrorSources.WallBelowTheFace)?.StandardUncertainty ?? 0;
        var without = Math.Sqrt(area.Budget.Rows.Where(row => row.Source != ErrorSources.WallBelowTheFace).Sum(row => row.StandardUncertainty * row.StandardUncertainty));
        if (lean == 0 || area.Estimate.StandardUncertainty < TimesAsWide * without)
        {
            return null;
        }

        double Percent(double u) => 100 * Metrology.Quantities.Estimate.CoverageFactor * u / area.Estimate.Value;
        return Told(
            WallLeanUnknown,
            FormattableString.Invariant(
                $"Hardly any of the wall below the face shows, so that nothing tells how it leans: the area is good to ±{Percent(area.Estimate.StandardUncertainty):0.0} % only, which would be ±{Percent(without):0.0} % if the lean were known."),
            "Take it again with the camera tilted 10 to 20 degrees (with a lens profile), or with the slice farther from under the camera, so that half a millimetre of its wall shows on one side; a thinner slice is less uncertain too.");
    }

    private static Problem Told(string code, string what, string remedy) => new(code, what, "section", remedy);
}
