using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Metrology.Outlines;

/// <summary>What can be wrong with a polygon that should be an outline.</summary>
public static class OutlineProblems
{
    /// <summary>A coordinate is not a finite number.</summary>
    public static Problem NotFinite(string where, int index) => new(
        "outline-not-finite",
        string.Create(CultureInfo.InvariantCulture, $"Point {index} of the outline is not a finite number."),
        where,
        "Export the outline again, or digitise the photo again.");

    /// <summary>Fewer than three different points, or no area.</summary>
    public static Problem TooSmall(string where, int count) => new(
        "outline-too-small",
        string.Create(CultureInfo.InvariantCulture, $"The outline has {count} different points and encloses nothing."),
        where,
        "Give at least three points that do not lie on one line.");

    /// <summary>The polygon crosses or touches itself.</summary>
    public static Problem CrossesItself(string where, double xMm, double yMm) => new(
        "outline-crosses-itself",
        string.Create(CultureInfo.InvariantCulture, $"The outline crosses itself near ({xMm:0.###}, {yMm:0.###}) mm."),
        where,
        "Redraw the stretch round that point, or digitise the photo again.");

    /// <summary>A parallel outline closes or falls into pieces.</summary>
    public static Problem OffsetCloses(string where, double lengthMm, int pieces) => new(
        "offset-closes",
        string.Create(
            CultureInfo.InvariantCulture,
            $"Moved by {lengthMm:0.###} mm all round, the outline {(pieces == 0 ? "closes wholly" : $"falls into {pieces} pieces")}."),
        where,
        "Choose a smaller allowance or clearance for so small or narrow a section.");
}
