using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Walls;

/// <summary>What can be wrong with a table of walls and keep-outs.</summary>
public static class PortWallsProblems
{
    /// <summary>A needed column is missing, or a column is not known.</summary>
    public static Problem Head(string where, string what) => new(
        "walls-head",
        what,
        where,
        $"Begin the file with the line {PortWallsCsv.Head} (or _in for inches; columns may stand in any order).");

    /// <summary>A line cannot be used.</summary>
    public static Problem Line(string where, int line, string what) => new(
        "walls-line",
        string.Create(CultureInfo.InvariantCulture, $"Line {line}: {what}."),
        where,
        "Put that line right in the table.");

    /// <summary>There are more lines than are read.</summary>
    public static Problem TooLong(string where) => new(
        "walls-too-long",
        string.Create(CultureInfo.InvariantCulture, $"There are more than {PortWallsCsv.MostLines} lines."),
        where,
        "Thin passage outlines out: a corner every half millimetre is enough.");

    /// <summary>A wall reading was not taken on the outline.</summary>
    public static Problem ReadingOffTheOutline(string name, double distanceMm) => new(
        "reading-off-the-outline",
        string.Create(
            CultureInfo.InvariantCulture, $"The place of the wall reading lies {distanceMm:0.0} mm from the outline; at most {WallReading.FarthestMm:0} mm are taken."),
        name.Length > 0 ? name : "wall reading",
        "Give the place on the outline of the port as it was when the wall was read, in its section frame.");
}
