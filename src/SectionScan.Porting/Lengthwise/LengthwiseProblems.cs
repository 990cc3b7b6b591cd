using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Lengthwise;

/// <summary>Why an outline gives no lengthwise shape.</summary>
public static class LengthwiseProblems
{
    /// <summary>Face or seat is missing.</summary>
    /// <param name="where">The shape.</param>
    /// <param name="straightSides">How many straight sides between corners it has.</param>
    public static Problem EndsMissing(string where, int straightSides) => new(
        "lengthwise-ends-missing",
        straightSides switch
        {
            0 => "Neither end is a straight cut",
            1 => "Only one end is a straight cut",
            _ => string.Create(CultureInfo.InvariantCulture, $"Of its {straightSides} straight sides no two lie at opposite ends"),
        }
        + "; a lengthwise shape runs from the manifold face to the valve seat and needs both.",
        where,
        "Show the whole half, both ends in view and cut straight, clear of the window's border. A casting is open at its ends: lay a straight bar across face and seat, level with the cut. Several slices on one photo are sections: use sectionscan digitise.");

    /// <summary>There is nothing to measure.</summary>
    public static Problem NothingFound(string where) => new(
        "lengthwise-nothing-found", "There is no outline in this photo.", where,
        "Lay the half, cut face up, in the sheet's window and photograph again.");

    /// <summary>Floor and roof do not run alongside each other.</summary>
    public static Problem NoCentreline(string where) => new(
        "lengthwise-no-centreline",
        string.Create(CultureInfo.InvariantCulture, $"No line midway between floor and roof reaches from end to end."),
        where,
        "Check the outline in the picture: floor and roof must run alongside each other from face to seat.");
}
