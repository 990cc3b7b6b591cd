using SectionScan.Metrology.Comparison;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>What is compared with what, and how.</summary>
/// <param name="Reference">A section's id, or "library:" and an entry's number, of a past revision with "@" and its number; null while nothing is chosen.</param>
/// <param name="Measured">A section's id; null while nothing is chosen.</param>
/// <param name="Alignment">How the measured one is laid on the reference.</param>
/// <param name="IsMirrored">True to exchange left and right of the measured one.</param>
/// <param name="FirstPort">One of two whole ports set beside each other, by its key; null while nothing is chosen.</param>
/// <param name="SecondPort">The other.</param>
public sealed record ComparisonChoice(
    string? Reference = null, string? Measured = null, AlignmentMethod Alignment = AlignmentMethod.BestFitWithRotation, bool IsMirrored = false,
    string? FirstPort = null, string? SecondPort = null)
{
    /// <summary>How the measured one was moved by hand afterwards.</summary>
    public HandMove ByHand { get; init; } = HandMove.None;

    /// <summary>What a library entry's number is written behind.</summary>
    public const string LibraryPrefix = "library:";
}
