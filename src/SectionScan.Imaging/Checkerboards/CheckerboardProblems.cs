using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Checkerboards;

/// <summary>Why a plain chessboard cannot be used.</summary>
public static class CheckerboardProblems
{
    /// <summary>No lattice, or too small a one.</summary>
    public static Problem NotFound(string where, int found, int needed) => new(
        "no-checkerboard",
        string.Create(CultureInfo.InvariantCulture, $"No checkerboard is seen: {found} corners in a lattice, at least {needed} in three rows and columns are needed."),
        where,
        "Lay the board flat, well lit, sharp, with squares of at least 15 px and as much of it uncovered as you can.");

    /// <summary>The lattice does not hold together.</summary>
    public static Problem Contradiction(string where, int contradictions, int corners) => new(
        "checkerboard-contradicts-itself",
        string.Create(CultureInfo.InvariantCulture, $"The squares do not count up: {contradictions} of {corners} corners have the wrong colour or place."),
        where,
        "Take away other patterns and mirrors, uncover the middle of the board, and retake.");
}
