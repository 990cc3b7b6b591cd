using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Drawings.Sections;

/// <summary>What can be wrong with a table of an outline's corners.</summary>
public static class OutlineCsvProblems
{
    /// <summary>The first line does not name the columns.</summary>
    public static Problem NoHead(string where) => new(
        "csv-no-head",
        "The first line does not name the columns and their unit.",
        where,
        "Begin the file with x_mm,y_mm or x_in,y_in.");

    /// <summary>A line is not two numbers.</summary>
    public static Problem BadLine(string where, int line) => new(
        "csv-bad-line",
        string.Create(CultureInfo.InvariantCulture, $"Line {line} is not two numbers."),
        where,
        "Give x and y on each line, parted as in the first line.");

    /// <summary>There are more corners than an outline may have.</summary>
    public static Problem TooLong(string where) => new(
        "csv-too-long",
        string.Create(CultureInfo.InvariantCulture, $"There are more than {OutlineCsv.MaxPoints} corners."),
        where,
        "Thin the outline out; 360 to 2000 corners are enough.");
}
