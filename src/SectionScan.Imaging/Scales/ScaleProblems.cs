using System.Globalization;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Scales;

/// <summary>Why a photo's scale cannot be used, or nothing is found beside it.</summary>
public static class ScaleProblems
{
    /// <summary>A point lies outside the photo.</summary>
    public static Problem Outside(string where, double x, double y, int widthPx, int heightPx) => new(
        "scale-point-outside",
        string.Create(CultureInfo.InvariantCulture, $"The point ({x:0.#}, {y:0.#}) lies outside the photo of {widthPx} × {heightPx} px."),
        where,
        "Give places in px of the photo as displayed, x from the left and y from the top.");

    /// <summary>The points of the scale are too close together to measure by.</summary>
    public static Problem TooShort(string where, double px, double neededPx) => new(
        "scale-too-short",
        string.Create(CultureInfo.InvariantCulture, $"The scale spans only {px:0} px; at least {neededPx:0} px are needed."),
        where,
        "Choose points farther apart: at least as far as the things to be measured are wide.");

    /// <summary>The four corners are no rectangle as seen by a camera.</summary>
    public static Problem NotARectangle(string where) => new(
        "rectangle-not-convex",
        "The four corners do not go round a rectangle.",
        where,
        "Give them in this order: top left, top right, bottom right, bottom left, as displayed.");

    /// <summary>The four corners do not fit a rectangle of that size.</summary>
    public static Problem RectangleDoesNotFit(string where, double rmsPx, double mostPx) => new(
        "rectangle-does-not-fit",
        string.Create(CultureInfo.InvariantCulture, $"The four corners miss a rectangle of that size by {rmsPx:0.0} px; at most {mostPx:0.0} px is believed."),
        where,
        "Check the order of the corners and that the size is width x height, in millimetres.");

    /// <summary>The file tells no resolution that a scanner could have written.</summary>
    public static Problem NoResolution(string where, string found) => new(
        "scan-without-resolution",
        $"The file tells no scanner's resolution ({found}).",
        where,
        "Give the resolution that was set on the scanner with --dpi, for example --dpi 300.");

    /// <summary>The pose photo is of another size.</summary>
    public static Problem OtherSize(string where, string posePhoto) => new(
        "pose-photo-differs",
        $"{posePhoto} has another size or orientation than this photo, so the camera or its settings were not the same.",
        where,
        "Take both photos with the same camera on a stand, without touching zoom, focus or picture size.");

    /// <summary>Nothing stands out.</summary>
    public static Problem NothingSeen(string where) => new(
        "no-objects",
        "Nothing that stands out from its ground is seen.",
        where,
        "Lay the things on a plain ground of another brightness or colour, clear of the border and of each other, each at least 8 mm across.");

    /// <summary>Something reaches the border of the photo.</summary>
    public static Problem RunsOff(string where, TargetPoint at) => new(
        "object-runs-off",
        string.Create(CultureInfo.InvariantCulture, $"What lies near ({at.XMm:0}, {at.YMm:0}) mm reaches the border of the photo and is left out."),
        where,
        "Move it into view if it is to be measured.");
}
