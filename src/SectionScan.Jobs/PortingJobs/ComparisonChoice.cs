using SectionScan.Metrology.Comparison;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>What is compared with what, and how.</summary>
/// <param name="Reference">A section's id, or "library:" and an entry's number; null while nothing is chosen.</param>
/// <param name="Measured">A section's id; null while nothing is chosen.</param>
/// <param name="Alignment">How the measured one is laid on the reference.</param>
/// <param name="IsMirrored">True to exchange left and right of the measured one.</param>
public sealed record ComparisonChoice(
    string? Reference = null, string? Measured = null, AlignmentMethod Alignment = AlignmentMethod.BestFit, bool IsMirrored = false)
{
    /// <summary>What a library entry's number is written behind.</summary>
    public const string LibraryPrefix = "library:";
}
