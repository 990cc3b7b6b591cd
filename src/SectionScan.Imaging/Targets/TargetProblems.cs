using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Targets;

/// <summary>Why a scale target cannot be used.</summary>
public static class TargetProblems
{
    /// <summary>No marker of any target is seen.</summary>
    public static Problem NotFound(string where) => new(
        "no-target",
        "No scale target is seen in the photo.",
        where,
        "Photograph the slices on the printed sheet, or lay the card on the sawn face; the whole target in view, sharp and evenly lit.");

    /// <summary>Too few saddle points.</summary>
    public static Problem TooFewCorners(string where, string kind, int found, int needed) => new(
        "too-few-corners",
        string.Create(CultureInfo.InvariantCulture, $"Only {found} corners of the {kind} are usable; at least {needed} are needed."),
        where,
        "Retake the photo with the whole target in view, sharp, and without glare, shadow edges or things lying on it.");

    /// <summary>The saddle points cover too small a part of the target.</summary>
    public static Problem BadlySpread(string where, string kind, double shareOfTarget) => new(
        "corners-badly-spread",
        string.Create(CultureInfo.InvariantCulture, $"The usable corners of the {kind} span only {100 * shareOfTarget:0} % of it."),
        where,
        "Uncover the target: corners on all its sides must be seen.");

    /// <summary>The saddle points do not fit a flat target.</summary>
    public static Problem DoesNotFit(string where, string kind, double rmsPx, double mostPx) => new(
        "target-does-not-fit",
        string.Create(CultureInfo.InvariantCulture, $"The corners of the {kind} are off by {rmsPx:0.0} px (root mean square); at most {mostPx:0.0} px is believed."),
        where,
        "Lay the target flat (tape its corners), keep the camera still, and photograph it again; a folded or curled sheet cannot be measured on.");
}
