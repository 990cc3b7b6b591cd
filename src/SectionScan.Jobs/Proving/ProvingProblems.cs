using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Proving;

/// <summary>What can stand in the way of a proof.</summary>
public static class ProvingProblems
{
    /// <summary>Nothing is known of the error of an outline.</summary>
    public static Problem ErrorNotKnown(string where) => new(
        "error-not-known",
        "Nothing is known of the error of this outline, and a proof must count it.",
        where,
        "Digitise it from its photo, or give the standard uncertainty of its wall with --other-u MM.");
}
