using SectionScan.Imaging.Checks;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Checking;

/// <summary>What became of one photo that was to be checked.</summary>
/// <param name="Path">The file as named.</param>
/// <param name="Report">The report, or null when the file cannot be read.</param>
/// <param name="Problem">Why it cannot be read, or null.</param>
public sealed record CheckOutcome(string Path, PhotoReport? Report, Problem? Problem)
{
    /// <summary>True when the photo can be measured.</summary>
    public bool IsUsable => Report is { Verdict: not CheckVerdict.Poor };
}
