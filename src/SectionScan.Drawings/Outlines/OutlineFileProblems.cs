using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Drawings.Outlines;

/// <summary>What can be wrong with a drawing that an outline is to be read from.</summary>
public static class OutlineFileProblems
{
    /// <summary>The file is not the kind that its name says, or is broken.</summary>
    public static Problem Broken(string where, string what) => new(
        "drawing-broken", what, where, "Open it in the drawing program and export it again; DXF must be the text form, not the binary one.");

    /// <summary>The file's name ends in nothing that is known.</summary>
    public static Problem UnknownKind(string where) => new(
        "drawing-kind-unknown", "The file's name does not tell what it is.", where, "Give a drawing that ends in .dxf or .svg, or a table that ends in .csv.");

    /// <summary>A line of the file cannot be understood.</summary>
    public static Problem BrokenLine(string where, int line, string what) => new(
        "drawing-broken",
        string.Create(CultureInfo.InvariantCulture, $"Line {line}: {what}"),
        where,
        "Open it in the drawing program and export it again; DXF must be the text form, not the binary one.");

    /// <summary>Something that is not drawn flat.</summary>
    public static Problem NotFlat(string where, string what) => new(
        "drawing-not-flat", $"{what} is not drawn in the x-y plane.", where, "Turn the drawing into the x-y plane and export it again.");

    /// <summary>A spline without control points.</summary>
    public static Problem SplineUnusable(string where, int line, string what) => new(
        "drawing-spline-unusable",
        string.Create(CultureInfo.InvariantCulture, $"The spline at line {line} {what}."),
        where,
        "Export it with control points and knots, or turn it into a polyline first.");

    /// <summary>The file states no unit.</summary>
    public static Problem NoUnit(string where) => new(
        "drawing-without-unit",
        "The drawing does not say what its unit is, and a wrong guess would be off by 25.4 times.",
        where,
        "Give --file-units mm or --file-units in.");

    /// <summary>Nothing in it is a closed line.</summary>
    public static Problem NoOutline(string where, int openCount, double? gapMm, double xMm, double yMm) => new(
        "drawing-without-outline",
        openCount == 0 ? "The drawing holds no line, arc, circle, polyline or spline to take an outline from."
        : string.Create(
            CultureInfo.InvariantCulture,
            $"None of the {openCount} lines in the drawing is closed{(gapMm is { } gap ? $"; the narrowest gap is {gap:0.####} mm near ({xMm:0.###}, {yMm:0.###}) mm" : string.Empty)}."),
        where,
        openCount == 0 ? "Break up blocks and groups, draw the outline as lines, and export it again." : "Close the outline in the drawing program, or give a wider --gap.");

    /// <summary>Several closed lines.</summary>
    public static Problem SeveralOutlines(string where, IReadOnlyList<(string Layer, double AreaMm2)> outlines) => new(
        "drawing-with-several-outlines",
        string.Create(
            CultureInfo.InvariantCulture,
            $"The drawing holds {outlines.Count} closed lines, the largest first: {string.Join("; ", outlines.Take(8).Select((one, i) => string.Create(CultureInfo.InvariantCulture, $"{i + 1}. {one.AreaMm2:0.#} mm² on layer \"{one.Layer}\"")))}{(outlines.Count > 8 ? "; ..." : string.Empty)}."),
        where,
        "Choose one with --layer NAME or with --contour NUMBER.");

    /// <summary>There is no such layer or contour.</summary>
    public static Problem NoSuchOutline(string where, string what) => new(
        "drawing-without-such-outline", what, where, "Look the drawing up without that choice to see what it holds.");

    /// <summary>Three lines end in one point.</summary>
    public static Problem Branches(string where, string layer, double x, double y) => new(
        "drawing-branches",
        string.Create(CultureInfo.InvariantCulture, $"More than two lines of layer \"{layer}\" end at ({x:0.###}, {y:0.###}) in drawing units, so the outline's way is not clear."),
        where,
        "Take doubled lines and centre lines off the outline's layer and export it again.");

    /// <summary>The drawing has more corners than an outline may have.</summary>
    public static Problem TooManyPoints(string where, int most) => new(
        "drawing-too-fine",
        string.Create(CultureInfo.InvariantCulture, $"The outline has more than {most} corners."),
        where,
        "Thin the line out in the drawing program; 360 to 2000 corners are enough.");
}
