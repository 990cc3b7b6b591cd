using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Metrology.Cameras;

/// <summary>Why a lens profile cannot be made or used.</summary>
public static class LensProblems
{
    /// <summary>The profile was made for other photos.</summary>
    public static Problem DoesNotFit(string where, int profileWidthPx, int profileHeightPx, int widthPx, int heightPx) => new(
        "lens-does-not-fit",
        string.Create(
            CultureInfo.InvariantCulture,
            $"The lens profile was made for photos of {profileWidthPx} × {profileHeightPx} px; this one has {widthPx} × {heightPx} px."),
        where,
        "Use the profile of this camera at this picture size, or leave --lens out.");

    /// <summary>Too few usable photos.</summary>
    public static Problem TooFewPhotos(string where, int usable, int needed, Problem? first) => new(
        "lens-too-few-photos",
        string.Create(CultureInfo.InvariantCulture, $"Only {usable} of the photos can be used; at least {needed} are needed.{(first is null ? string.Empty : $" Of {first.Where}: {first.What}")}"),
        where,
        "Photograph the bare sheet 8 to 12 times: square on, and tilted 15 to 40 degrees from each side, at the distance you work from. Photos of a plain checkerboard need --checkerboard MM, the side of its squares.");

    /// <summary>The same photo was given twice; counted twice it would pretend to know more.</summary>
    public static Problem Repeated(string where, string first) => new(
        "lens-photo-repeated", $"This is the same photo as {first}, byte for byte.", where, "Give each photo once.");

    /// <summary>The photos do not differ enough in tilt.</summary>
    public static Problem TooSimilar(string where, double tiltSpreadDeg, double neededDeg) => new(
        "lens-photos-too-similar",
        string.Create(
            CultureInfo.InvariantCulture,
            $"The photos differ by only {tiltSpreadDeg:0} degrees in how they look at the sheet; {neededDeg:0} are needed to tell focal length from distance."),
        where,
        "Add photos tilted 15 to 40 degrees from at least two sides.");

    /// <summary>The corners do not reach enough of the frame.</summary>
    public static Problem PoorCoverage(string where, double share, double needed, string missing) => new(
        "lens-poor-coverage",
        string.Create(
            CultureInfo.InvariantCulture,
            $"The sheet was seen in only {100 * share:0} % of the frame over all photos; {100 * needed:0} % are needed. Missing: {missing}."),
        where,
        "Add photos in which the sheet reaches there.");

    /// <summary>The photos come from different cameras or sizes.</summary>
    public static Problem Mixed(string where, string first, string other) => new(
        "lens-photos-mixed",
        $"The photos come from different cameras, zooms or picture sizes: {first}, and {other}.",
        where,
        "Make one profile for each camera, zoom and picture size.");

    /// <summary>The fit left too much.</summary>
    public static Problem BadFit(string where, double rmsPx, double mostPx, string worst) => new(
        "lens-bad-fit",
        string.Create(CultureInfo.InvariantCulture, $"The corners are off by {rmsPx:0.00} px (root mean square); at most {mostPx:0.0} px is believed. Worst: {worst}."),
        where,
        "Leave out blurred photos, lay the sheet flat (tape its corners), and make sure that nothing moved.");
}
