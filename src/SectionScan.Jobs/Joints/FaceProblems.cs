using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Joints;

/// <summary>What can be wrong with the files that are to make a face.</summary>
public static class FaceProblems
{
    /// <summary>Several openings whose places on one face are not known.</summary>
    public static Problem NotOneFace(string face) => new(
        "face-not-from-one-photo",
        "Several openings are named whose places on the face are not known together.",
        face,
        "Give one photo of the whole face with the card on it, or the section documents of all openings of one photo.");

    /// <summary>An opening is wanted that the flange does not have.</summary>
    public static Problem OpeningMissing(string where, int opening, int found) => new(
        "job-joint-opening", FormattableString.Invariant($"Opening {opening} of the manifold is wanted, and {found} {(found == 1 ? "was" : "were")} found."), where,
        "Count the openings from left to right on the photo, from 1.");
}
