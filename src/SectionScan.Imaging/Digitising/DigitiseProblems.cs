using System.Globalization;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Digitising;

/// <summary>Why a photo with a good target gives no section.</summary>
public static class DigitiseProblems
{
    /// <summary>Nothing lies in the window.</summary>
    public static Problem NoSlices(string where) => new(
        "no-slices",
        "No slice is seen in the sheet's window.",
        where,
        "Lay the slices inside the white window, clear of its border and of each other; choose rubber that is not paper-white.");

    /// <summary>Nothing stands out where a person pointed to a slice.</summary>
    public static Problem NothingAtSeed(string where, TargetPoint at) => new(
        "nothing-at-place",
        string.Create(CultureInfo.InvariantCulture, $"Nothing stands out from paper and shadow at the place pointed to, ({at.XMm:0}, {at.YMm:0}) mm of the sheet."),
        where,
        "Point to the middle of the slice's face; if it is there, take the photo again with even light, or paint the rubber's face darker.");

    /// <summary>No opening is seen beside the card.</summary>
    public static Problem NoOpenings(string where) => new(
        "no-openings",
        "No opening is seen in the face beside the card.",
        where,
        "Lay the card flat on the sawn face beside the ports, with the whole of each opening and metal round it in view; light the face evenly.");

    /// <summary>The thing looked for needs the other target.</summary>
    public static Problem WrongTarget(string where, string wanted, string target) => new(
        "wrong-target",
        $"{wanted} were asked for, but the photo shows the {target}.",
        where,
        "Slices of a mould belong on the sheet, openings beside the card. Give --subject to match, or leave it out.");

    /// <summary>A slice reaches the border of the window or of the picture.</summary>
    public static Problem RunsOff(string where, TargetPoint at) => new(
        "slice-runs-off",
        string.Create(CultureInfo.InvariantCulture, $"The slice near ({at.XMm:0}, {at.YMm:0}) mm of the sheet reaches the border of the window or of the photo."),
        where,
        "Move it inside the white window, with 2 mm of paper all round, and keep the whole window in the photo.");

    /// <summary>An opening reaches the border of the photo.</summary>
    public static Problem OpeningRunsOff(string where, TargetPoint at) => new(
        "opening-runs-off",
        string.Create(CultureInfo.InvariantCulture, $"The opening near ({at.XMm:0}, {at.YMm:0}) mm from the card's corner is cut off by the border of the photo."),
        where,
        "Step back, or move the camera, so that the whole opening and the metal round it are in view.");

    /// <summary>The edge could not be followed.</summary>
    public static Problem EdgeUnclear(string where, TargetPoint at, double weakShare) => new(
        "edge-unclear",
        string.Create(
            CultureInfo.InvariantCulture,
            $"The edge of the face near ({at.XMm:0}, {at.YMm:0}) mm cannot be told from what lies behind it over {100 * weakShare:0} % of its length."),
        where,
        "Light from two sides, avoid glare, lay rubber of another colour, and retake.");

    /// <summary>The thickness does not fit under the camera.</summary>
    public static Problem TooThick(string where, double thicknessMm, double cameraHeightMm) => new(
        "thickness-impossible",
        string.Create(CultureInfo.InvariantCulture, $"A thickness of {thicknessMm:0.#} mm cannot lie under a camera that is {cameraHeightMm:0} mm above the sheet."),
        where,
        "Check the thickness; give it in millimetres.");

    /// <summary>Shrinkage was told, but metal is measured.</summary>
    public static Problem ShrinkageOfOpening(string where) => new(
        "shrinkage-of-opening",
        "A mould's shrinkage is given, but this photo shows openings in metal, which do not shrink.",
        where,
        "Leave out --shrinkage for photos of openings.");

    /// <summary>The gauge study was made on the other target.</summary>
    public static Problem GaugeOfOtherTarget(string where, string ofStudy, string target) => new(
        "gauge-of-other-target",
        $"The gauge study was made on the {ofStudy}, but this photo shows the {target}.",
        where,
        $"Make a study with plugs on the {target}, or leave --gauge out for this photo.");

    /// <summary>The gauge study was made with other print ratios.</summary>
    public static Problem GaugeOfOtherRatio(string where, IReadOnlyList<double>? ofStudy, (double X, double Y)? told) => new(
        "gauge-of-other-print-ratio",
        $"The gauge study was made with {Ratio(ofStudy is [var x, var y] ? (x, y) : null)}, this photo is measured with {Ratio(told)}.",
        where,
        "Give the same --print-ratio as for the study (or none, if it had none), on the same print.");

    private static string Ratio((double X, double Y)? ratio) =>
        ratio is { } r ? string.Create(CultureInfo.InvariantCulture, $"--print-ratio {r.X},{r.Y}") : "no --print-ratio";
}
