using SectionScan.Imaging.Edges;
using SectionScan.Imaging.Scales;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Imaging.Digitising;

/// <summary>The causes of error of one digitised outline, each as how the outline would move at one standard uncertainty.</summary>
internal static class ErrorSources
{
    /// <summary>The name of what is not known of the wall's lean.</summary>
    public const string WallBelowTheFace = "wall below the face";

    // What the edge model does not know (tone curve, sharpening, texture), as a share of a pixel and of the blur.
    private const double EdgeBiasPx = 0.2;
    private const double EdgeBiasBlurs = 0.04;

    private const double FlareShare = 0.5;
    private const double FlareMostBlurs = 1.2;

    // Slices whose thickness nobody told are taken for flat; they may be about this thick.
    private const double UntoldThicknessMm = 6;

    // A tag laid and cut by hand is read this well, rad; how it was laid is the person's own.
    private const double UpUncertaintyRad = 0.001;

    /// <summary>Works out all causes.</summary>
    /// <param name="edge">The measured edge.</param>
    /// <param name="placement">Where the section lies.</param>
    /// <param name="scale">The camera with its uncertainty.</param>
    /// <param name="settings">The settings.</param>
    /// <param name="thicknessMm">Height of the face, mm.</param>
    /// <param name="isSlice">True for a slice of a mould, false for an opening.</param>
    public static IReadOnlyList<OutlineErrorSource> Of(
        FaceEdge edge, SectionPlacement placement, ImageScale scale, DigitiseSettings settings, double thicknessMm, bool isSlice)
    {
        var sources = new List<OutlineErrorSource>
        {
            Stretch(placement, settings.Gauge is { } gauge ? GaugeUse.Stretch(gauge) : scale.Stretch),
        };
        var map = new PlaneShift(edge.Points, placement, scale.Camera, thicknessMm);
        sources.AddRange(scale.Deviations.Select(
            d => new OutlineErrorSource(d.Name, [.. d.Cameras.Select(c => map.Effect(c))], d.IsAssumed)));
        if (thicknessMm > 0)
        {
            sources.Add(new(
                "slice thickness", [map.Effect(scale.Camera, thicknessMm + settings.ThicknessStandardUncertaintyMm)], IsAssumed: true));
            sources.Add(Wall(edge, placement, scale.Camera, thicknessMm));
        }

        else if (settings.ThicknessMm is null && isSlice)
        {
            sources.Add(new("slice thickness", [map.Effect(scale.Camera, UntoldThicknessMm)], IsAssumed: true));
        }

        if (settings.Shrinkage is { } shrinkage && isSlice)
        {
            sources.Add(shrinkage.ErrorSource);
        }

        var bias = Math.Sqrt(Square(EdgeBiasPx * edge.PixelMm) + Square(EdgeBiasBlurs * edge.BlurMm) + Square(edge.WeakShare * 0.1));
        sources.Add(settings.Gauge is { } study
            ? GaugeUse.Edge(study, edge, edge.WeakShare * 0.1)
            : new("edge, systematic", [new NormalOffsetEffect(bias)], IsAssumed: true));
        sources.Add(new("edge, random", [new RandomEdgeEffect(Math.Max(edge.ScatterMm, 0.004), 0.6)]));
        foreach (var cause in edge.Doubts.GroupBy(d => d.Cause).OrderBy(g => g.Key))
        {
            sources.Add(new(NameOf(cause.Key), [.. cause.Select(d => Doubt(d, placement))], IsAssumed: true));
        }

        sources.Add(new("up direction", [new LinearEffect(0, -UpUncertaintyRad, UpUncertaintyRad, 0)], IsAssumed: true));
        return sources;
    }

    private static string NameOf(EdgeDoubtCause cause) => cause switch
    {
        EdgeDoubtCause.Faint => "edge, faint stretches",
        EdgeDoubtCause.Unsteady => "edge, unsteady stretches",
        EdgeDoubtCause.WallLikeFace => "wall like the face",
        _ => "narrow strip of wall",
    };

    private static LocalOffsetEffect Doubt(EdgeDoubt doubt, SectionPlacement placement)
    {
        var at = placement.ToSection(doubt.Centre);
        return new(doubt.StandardUncertaintyMm, at.XMm, at.YMm, doubt.RadiusMm);
    }

    private static OutlineErrorSource Stretch(SectionPlacement placement, ScaleStretch stretch)
    {
        if (stretch.IsShared)
        {
            return new(stretch.Name, [LinearEffect.Scale(stretch.Across)], stretch.IsAssumed);
        }

        // A stretch along the target's x (then y), seen in the section's turned frame.
        var (x, y) = (stretch.Across, stretch.Up);
        var (sin, cos) = Math.SinCos(placement.Up.Radians);
        var across = new LinearEffect(x * cos * cos, -x * sin * cos, -x * sin * cos, x * sin * sin);
        var up = new LinearEffect(y * sin * sin, y * sin * cos, y * sin * cos, y * cos * cos);
        return new(stretch.Name, [across, up], stretch.IsAssumed);
    }

    /// <summary>Where the wall shows only as a narrow strip, face and wall melt into one edge; how the wall leans then shifts it.</summary>
    private static OutlineErrorSource Wall(FaceEdge edge, SectionPlacement placement, Camera camera, double thicknessMm)
    {
        var centre = placement.ToSection(camera.FootPoint);
        var distance = Math.Sqrt((centre.XMm * centre.XMm) + (centre.YMm * centre.YMm));
        var (dx, dy) = distance > 1 ? (centre.XMm / distance, centre.YMm / distance) : (0, 1);
        var shown = thicknessMm / camera.HeightMm * distance;

        // Only a strip of less than five blurs melts; what is not known of the flare then goes into the edge, wholly where the wall is lit like
        // the face, by half where it is dark. Right below the camera such a strip shows all round, else on the side toward the camera.
        var melts = Math.Clamp(1.5 - (shown / (10 * edge.BlurMm)), 0.2, 1);
        var offset = melts * Math.Min(FlareShare * edge.FlareUncertaintyMm, FlareMostBlurs * edge.BlurMm);
        return new(WallBelowTheFace, [shown < edge.FlareUncertaintyMm ? new NormalOffsetEffect(offset) : new FacingOffsetEffect(offset, dx, dy)], IsAssumed: true);
    }

    private static double Square(double x) => x * x;
}
