using SectionScan.Imaging.Edges;
using SectionScan.Imaging.Scales;
using SectionScan.Metrology.GaugeStudies;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Imaging.Digitising;

/// <summary>The shop's own gauge study in place of the defaults for edge and scale; all other causes of error stay.</summary>
internal static class GaugeUse
{
    // A photo whose pixels are this much coarser than the study's reads edges less well than the study tells.
    private const double CoarserToMention = 1.25;

    private const double SameRatio = 1e-6;

    /// <summary>Why the study does not hold for a photo, or null when it does.</summary>
    /// <param name="study">The study.</param>
    /// <param name="target">The photo's target.</param>
    /// <param name="printRatio">The ratios told for the photo.</param>
    /// <param name="where">The photo.</param>
    public static Problem? Refusal(GaugeStudy study, string target, (double X, double Y)? printRatio, string where)
    {
        if (study.Target != target)
        {
            return DigitiseProblems.GaugeOfOtherTarget(where, study.Target, target);
        }

        var (x, y) = printRatio ?? (1, 1);
        var (ofX, ofY) = study.PrintRatio is [var first, var second] ? (first, second) : (1, 1);
        return Math.Abs(x - ofX) > SameRatio || Math.Abs(y - ofY) > SameRatio
            ? DigitiseProblems.GaugeOfOtherRatio(where, study.PrintRatio, printRatio)
            : null;
    }

    /// <summary>The scale's cause of error as the study found it.</summary>
    public static ScaleStretch Stretch(GaugeStudy study) => new(
        "print scale, by gauge study", study.ScaleStandardUncertainty, study.ScaleStandardUncertainty, IsShared: true, IsAssumed: false);

    /// <summary>The edge's cause of error as the study found it, more where pixels are coarser than its own.</summary>
    /// <param name="study">The study.</param>
    /// <param name="edge">The edge.</param>
    /// <param name="weakMm">What this edge's own weak stretches add, mm.</param>
    public static OutlineErrorSource Edge(GaugeStudy study, FaceEdge edge, double weakMm)
    {
        var offset = study.EdgeStandardUncertaintyMm * Math.Max(1, edge.PixelMm / study.PixelMm);
        return new("edge, by gauge study", [new NormalOffsetEffect(Math.Sqrt((offset * offset) + (weakMm * weakMm)))]);
    }

    /// <summary>Where the photo was not taken as the study's were.</summary>
    public static IEnumerable<string> Warnings(GaugeStudy study, Scene scene)
    {
        if (study.CameraModels.Count > 0 && scene.Photo.Facts.Camera is { } camera && !study.CameraModels.Contains(camera))
        {
            yield return $"The gauge study was made with {string.Join(" and ", study.CameraModels)}, this photo with {camera}. Make a study with this camera, or leave --gauge out.";
        }

        if (study.HasLensProfile != (scene.Settings.Lens is not null))
        {
            yield return study.HasLensProfile
                ? "The gauge study was made with a lens profile, this photo is measured without one. Give --lens as for the study."
                : "The gauge study was made without a lens profile, this photo is measured with one. Leave --lens out, or make the study again with it.";
        }

        var pixelMm = scene.Scale.Camera.MillimetresPerPixel(scene.Scale.Camera.FootPoint, scene.ThicknessMm);
        if (pixelMm > CoarserToMention * study.PixelMm)
        {
            yield return FormattableString.Invariant(
                $"A pixel covers {pixelMm:0.000} mm here and {study.PixelMm:0.000} mm in the gauge study; the edge's uncertainty is widened in proportion. Go as near as for the study.");
        }
    }
}
