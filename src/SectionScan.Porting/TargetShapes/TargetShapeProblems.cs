using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Porting.TargetShapes;

/// <summary>What can stand in the way of a target shape.</summary>
public static class TargetShapeProblems
{
    /// <summary>The wall would run through itself.</summary>
    public static Problem CrossesItself() => new(
        "target-shape-crosses-itself",
        "The target would cross itself: somewhere it goes farther out than the own wall's hollow is wide.",
        "target shape",
        "Lower the share there, or check that the two sections belong to the same station and lie the same way up.");

    /// <summary>The two sections are too unlike to be of one station.</summary>
    public static Problem TooFarApart(string where, double mostMm, double farthestMm) => new(
        "target-shape-too-far-apart",
        string.Create(CultureInfo.InvariantCulture, $"The reference lies up to {mostMm:0.0} mm from the own wall; more than {farthestMm:0} mm is no cut by hand."),
        where,
        "Check that both are of the same station, at true size and the same way up.");
}
