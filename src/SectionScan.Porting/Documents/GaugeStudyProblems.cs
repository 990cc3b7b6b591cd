using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Documents;

/// <summary>What can be wrong with a gauge study as a file.</summary>
public static class GaugeStudyProblems
{
    /// <summary>The file holds no gauge study that can be used.</summary>
    public static Problem NotAGaugeStudy(string where, string reason) => new(
        "not-a-gauge-study", $"This is not a gauge study: {reason}.", where, "Make one with: sectionscan gauge STUDY.csv --out FILE");
}
