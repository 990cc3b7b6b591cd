using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Joints;

/// <summary>Why a joint cannot be matched.</summary>
public static class JointProblems
{
    /// <summary>A face has no opening.</summary>
    public static Problem NoOpening(string face) => new(
        "joint-no-opening", "There is no opening in this face.", face, "Give a photo or a section document that shows the opening.");

    /// <summary>The faces have different numbers of openings.</summary>
    public static Problem OpeningsDiffer(string face, int found, string port, int wanted) => new(
        "joint-openings-differ",
        string.Create(CultureInfo.InvariantCulture, $"There are {found} openings here and {wanted} in {port}."),
        face,
        "Give the openings that belong together, as many on each side.");

    /// <summary>The studs' places are told on one side only, or not as many.</summary>
    public static Problem StudsDiffer(string face, int found, string port, int wanted) => new(
        "joint-studs-differ",
        string.Create(CultureInfo.InvariantCulture, $"{found} places of studs or holes are told here and {wanted} in {port}."),
        face,
        "Tell each stud of the port and the hole that belongs to it, in the same order.");

    /// <summary>A clearance without the studs it belongs to, or the other way round.</summary>
    public static Problem ClearanceWithoutStuds(string face) => new(
        "joint-clearance-without-studs",
        "The studs' clearance and the places of studs and holes belong together; one of them is missing.",
        face,
        "Give the clearance (hole less stud diameter) and the places on both faces, or limit shift and turn instead.");

    /// <summary>The bolt patterns do not go together within the clearance.</summary>
    public static Problem StudsDoNotFit(string face, double mismatchMm, double playMm) => new(
        "joint-studs-do-not-fit",
        string.Create(CultureInfo.InvariantCulture, $"With the holes laid best on the studs one is still {mismatchMm:0.00} mm off its middle, and the clearance lets it be {playMm:0.00} mm off."),
        face,
        "Check the places of studs and holes, their order, and which way each face is seen; or measure the clearance again.");

    /// <summary>The openings do not even overlap.</summary>
    public static Problem OpeningsApart(string opening) => new(
        "joint-openings-apart",
        "Port and manifold do not overlap at this opening.",
        opening,
        "Check that the openings belong together, which way each face is seen, and the limits on shift and turn.");
}
