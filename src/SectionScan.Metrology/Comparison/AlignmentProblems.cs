using SectionScan.Metrology.Results;

namespace SectionScan.Metrology.Comparison;

/// <summary>What can stand in the way of laying one section on another.</summary>
public static class AlignmentProblems
{
    /// <summary>No guide axis is marked.</summary>
    public static Problem NoGuideAxis(string where) => new(
        "no-guide-axis", "The guide axis is not marked.", where, "Mark two of its points: sectionscan mark SECTION --guide-axis X1,Y1,X2,Y2");

    /// <summary>No floor line is marked.</summary>
    public static Problem NoFloorLine(string where) => new(
        "no-floor-line", "The floor line is not marked.", where, "Mark two of its points: sectionscan mark SECTION --floor-line X1,Y1,X2,Y2");

    /// <summary>No point of one name is marked in both.</summary>
    public static Problem NoPointsInBoth(IEnumerable<string> reference, IEnumerable<string> measured) => new(
        "no-points-in-both",
        $"No point is marked in both: the reference has {Words(reference)}, the measured section {Words(measured)}.",
        "marked points",
        "Mark the same places under the same names: sectionscan mark SECTION --point NAME=X,Y");

    private static string Words(IEnumerable<string> names) =>
        string.Join(", ", names.Order(StringComparer.Ordinal)) is { Length: > 0 } some ? some : "none";
}
