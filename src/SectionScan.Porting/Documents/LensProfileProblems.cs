using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Documents;

/// <summary>What can be wrong with a lens profile as a file.</summary>
public static class LensProfileProblems
{
    /// <summary>The file holds no lens profile that can be used.</summary>
    public static Problem NotALensProfile(string where, string reason) => new(
        "not-a-lens-profile", $"This is not a lens profile: {reason}.", where, "Make one with: sectionscan lens PHOTO... --out FILE");
}
