using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Checks;

/// <summary>The one set of rules by which a photo is good, fair or poor: <c>check</c> shows them all, <c>digitise</c> refuses what is
/// poor and warns of what is fair.</summary>
internal static class CheckRules
{
    // Beyond 4 px the blur reaches from the edge of a square to its marker (an eighth of a square, some 25 px at a pixel's 0.1 mm, holds
    // ±3 standard deviations); below 2 px a bias of 0.04 blurs stays below a tenth of a pixel.
    private const double FairBlurPx = 2;
    private const double PoorBlurPx = 4;

    // A corner is found to 0.05 to 0.2 px on real photos; at 0.6 px the sheet is not flat or the lens is not known.
    private const double FairRmsPx = 0.6;

    // One corner of the sheet covered costs about a tenth of its saddle points; half of them still surround the window.
    private const double FairCornerShare = 0.5;

    // A step of 0.25 mm a pixel: a tenth of a pixel of bias is 0.025 mm all round, half of the 0.05 mm that a width is to be known to.
    private const double FairPixelMm = 0.12;
    private const double PoorPixelMm = 0.25;

    // Paper cut off at the end of the scale moves the half level: overexposed by a third, an edge moves by 0.3 blurs toward the dark.
    // A fleck of glare does it in one place; a quarter of the paper does it to most edges.
    private const double FairClippedPercent = 2;
    private const double PoorClippedPercent = 40;

    // With paper at 45 the step to dark rubber has some 35 levels against noise of 4: 0.2 px for a single reading (bound of a blurred
    // step, n/C·√(2√π·σ)), and JPEG's own steps are as large as that.
    private const double FairPaperLevel = 110;
    private const double PoorPaperLevel = 45;

    // Ink reflects 4 to 6 % (cited from memory), stored as 55 to 70 where paper is well exposed; black at zero is cut off like clipped paper.
    private const double FairCrushedPercent = 20;

    // Light that falls to a third across the sheet bends by more than the smooth surface that is fitted to it can follow; at a
    // tenth the dark end is as noisy as a dark photo.
    private const double FairUnevenness = 2.5;
    private const double PoorUnevenness = 10;

    // At a tilt t the far side's pixels are 1/cos t longer and a wall shows h·tan t of itself: at 25° half its height, at 50° more than all.
    private const double FairTiltDeg = 25;
    private const double PoorTiltDeg = 50;

    // Area's share from the camera's height: 0.1 % is a good part of the 0.25 % that an area is to be known to.
    private const double FairHeightCostPercent = 0.1;

    // A sheet that fills a quarter of the frame wastes half of the pixels in each direction.
    private const double FairFrameSharePercent = 25;

    // Beside the card the openings have to fit in; below this it is a tenth of the frame in each direction.
    private const double FairCardSharePercent = 3;

    // A strip of wall wider than a template's gap of 3 mm is easily taken for face (common practice, no source).
    private const double FairWallMm = 3;

    // The thickness error that the cost is told for: a calliper on rubber (common practice, no source).
    private const double ThicknessErrorMm = 0.1;

    private static readonly CheckRule SharpnessRule = new(
        "sharpness", "too-blurred", "px", FairBlurPx, PoorBlurPx,
        "Hold the camera still or use a stand and the self-timer, tap on the target to focus, add light, and retake.");

    private static readonly CheckRule CornersRule = new(
        "corners", "few-corners", "%", 100 * FairCornerShare, null, "Uncover the target and keep all of it in view.", IsWorseBelow: true);

    private static readonly CheckRule FitRule = new(
        "target fit", "target-fit", "px", FairRmsPx, null, "Lay the target flat (tape its corners), and make a lens profile (sectionscan lens).");

    private static readonly CheckRule PixelRule = new(
        "pixel size", "pixels-too-coarse", "mm", FairPixelMm, PoorPixelMm,
        "Go nearer or zoom in optically until the sheet fills the frame, and give the photo at the camera's full size.");

    private static readonly CheckRule ClippingRule = new(
        "clipped paper", "paper-clipped", "%", FairClippedPercent, PoorClippedPercent,
        "Expose for the paper: tap on it and draw the brightness down by one stop, keep lamps from mirroring in it, and retake.");

    private static readonly CheckRule ExposureRule = new(
        "exposure", "too-dark", "1", FairPaperLevel, PoorPaperLevel,
        "Add light, or draw the brightness up until the paper is light grey in the photo, and retake.", IsWorseBelow: true);

    private static readonly CheckRule CrushedRule = new(
        "crushed black", "black-crushed", "%", FairCrushedPercent, null,
        "Draw the brightness up a little and switch off the camera's contrast or night modes.");

    private static readonly CheckRule EvennessRule = new(
        "light", "light-uneven", "1", FairUnevenness, PoorUnevenness,
        "Light from two sides, from farther off, or by daylight without sun; keep your own shadow off the sheet.");

    private static readonly CheckRule TiltRule = new(
        "tilt", "tilt-too-steep", "deg", FairTiltDeg, PoorTiltDeg,
        "Hold the camera over the slices, tilted by no more than 20 degrees.");

    private static readonly CheckRule HeightRule = new(
        "camera height", "height-unsure", "%", FairHeightCostPercent, null,
        "Make a lens profile (sectionscan lens) and give it with --lens, or tilt the camera by 10 to 20 degrees.");

    private static readonly CheckRule FrameRule = new(
        "share of frame", "target-small", "%", FairFrameSharePercent, null,
        "Go nearer or zoom in until the target nearly fills the frame.", IsWorseBelow: true);

    private static readonly CheckRule CardFrameRule = FrameRule with
    {
        FairLimit = FairCardSharePercent,
        Remedy = "Go nearer or zoom in until the card and the openings fill the frame.",
    };

    private static readonly CheckRule WallRule = new(
        "wall in view", "wall-in-view", "mm", FairWallMm, null,
        "Step back and zoom in, or move it to the middle, under the camera.");

    /// <summary>What is only fair, as warnings.</summary>
    public static IReadOnlyList<string> Cautions(IEnumerable<CheckItem> items) =>
        [.. items.Where(i => i.Verdict == CheckVerdict.Fair).Select(i => $"{i.Finding} {i.Remedy}")];

    /// <summary>How blurred edges may be.</summary>
    public static CheckItem Sharpness(double blurPx, double pixelMm) => SharpnessRule.Judge(
        blurPx,
        FormattableString.Invariant($"The target's edges are blurred over {blurPx:0.0} px or {blurPx * pixelMm:0.00} mm (standard deviation)."));

    /// <summary>How many of the target's corners are seen.</summary>
    public static CheckItem Corners(string kind, int found, int expected) => CornersRule.Judge(
        100.0 * found / expected, FormattableString.Invariant($"{found} of the {expected} corners of the {kind} are seen."));

    /// <summary>How well they fit a flat target.</summary>
    public static CheckItem Fit(double rmsPx) => FitRule.Judge(
        rmsPx, FormattableString.Invariant($"The corners are off by {rmsPx:0.00} px (root mean square)."));

    /// <summary>How large a pixel is on the paper.</summary>
    public static CheckItem PixelSize(double pixelMm) => PixelRule.Judge(
        pixelMm, FormattableString.Invariant($"A pixel covers {pixelMm:0.000} mm of the paper."));

    /// <summary>How the paper is exposed.</summary>
    public static IEnumerable<CheckItem> Light(PaperLight light)
    {
        yield return ClippingRule.Judge(
            100 * light.ClippedShare, FormattableString.Invariant($"{100 * light.ClippedShare:0} % of the white paper is overexposed (clipped)."));
        yield return ExposureRule.Judge(
            light.PaperLevel, FormattableString.Invariant($"White paper is stored as {light.PaperLevel:0} of 255, ink as {light.InkLevel:0}."));
        yield return CrushedRule.Judge(
            100 * light.CrushedShare, FormattableString.Invariant($"{100 * light.CrushedShare:0} % of the black ink is cut off at zero."));
        yield return EvennessRule.Judge(
            light.Unevenness, FormattableString.Invariant($"The paper's brightest part has {light.Unevenness:0.0} times the light of its darkest."));
    }

    /// <summary>How the camera was held.</summary>
    public static CheckItem Tilt(double tiltDeg) => TiltRule.Judge(
        tiltDeg, FormattableString.Invariant($"The camera looks down {tiltDeg:0.0} degrees askew."));

    /// <summary>What not knowing the camera's height better costs.</summary>
    /// <param name="fit">The camera.</param>
    /// <param name="thicknessMm">Height of the faces, mm.</param>
    /// <remarks>A face at h seen from H is magnified by H/(H − h), so u(H) costs 2·h/(H − h)·u(H)/H of area.</remarks>
    public static CheckItem Height(CameraFit fit, double thicknessMm)
    {
        var (height, u) = (fit.Camera.HeightMm, fit.HeightStandardUncertaintyMm);
        var cost = 200 * thicknessMm / (height - thicknessMm) * u / height;
        return HeightRule.Judge(cost, FormattableString.Invariant(
            $"The camera is {height:0} ± {2 * u:0.#} mm above the paper; at {thicknessMm:0.#} mm of thickness that leaves ± {2 * cost:0.00} % of area open."));
    }

    /// <summary>How much of the frame the target fills.</summary>
    public static CheckItem FrameShare(string kind, double share) => (kind == "card" ? CardFrameRule : FrameRule).Judge(
        100 * share, FormattableString.Invariant($"The {kind} fills {100 * share:0} % of the frame."));

    /// <summary>How much of a slice's wall shows, and what a wrong thickness costs there.</summary>
    /// <param name="camera">The camera.</param>
    /// <param name="middle">The slice's middle.</param>
    /// <param name="thicknessMm">Its thickness, mm.</param>
    public static CheckItem Wall(Camera camera, TargetPoint middle, double thicknessMm)
    {
        var away = middle.DistanceTo(camera.FootPoint);
        var wall = thicknessMm / camera.HeightMm * away;
        var below = camera.HeightMm - thicknessMm;
        return WallRule.Judge(wall, FormattableString.Invariant(
            $"The slice near ({middle.XMm:0}, {middle.YMm:0}) mm lies {away:0} mm from under the camera: {wall:0.0} mm of its wall shows, and {ThicknessErrorMm:0.0} mm of error in its thickness costs {200 * ThicknessErrorMm / below:0.00} % of area."));
    }
}
