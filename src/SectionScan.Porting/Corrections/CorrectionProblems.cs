using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Corrections;

/// <summary>Why a correction by hand cannot be made.</summary>
public static class CorrectionProblems
{
    /// <summary>The section did not come from a photo.</summary>
    public static Problem NoPhoto() => new(
        "correction-without-photo", "The section holds no place on a photo.", "section", "Correct the section where its photo lies, or digitise the photo again.");

    /// <summary>Too few places were given.</summary>
    public static Problem TooFewPlaces(int needed) => new(
        "correction-too-few-places", FormattableString.Invariant($"At least {needed} places are needed."), "correction",
        "Click more places along the edge, from one end of the stretch to the other.");

    /// <summary>The place is far from the outline.</summary>
    public static Problem FarFromOutline(double distanceMm) => new(
        "correction-far-from-outline", FormattableString.Invariant($"The place is {distanceMm:0.0} mm away from the outline."), "correction",
        "Choose the section first, then click on or close to its outline.");

    /// <summary>The stretch is nearly the whole outline.</summary>
    public static Problem StretchTooLong() => new(
        "correction-too-long", "The stretch is more than half of the outline.", "correction",
        "Correct it in shorter stretches, or take the photo again.");

    /// <summary>The section was corrected elsewhere in the meantime.</summary>
    public static Problem SectionChanged() => new(
        "correction-overtaken", "The section was changed in another window meanwhile; this correction was not made.", "correction",
        "Look at the section as it is now, and make the correction again if it is still needed.");
}
