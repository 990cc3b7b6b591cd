using SectionScan.Metrology.Cameras;

namespace SectionScan.Jobs.WholeJobs;

/// <summary>What a job gave.</summary>
/// <param name="Source">The job and its folder.</param>
/// <param name="Lens">The lens profile used, or null.</param>
/// <param name="Ports">The ports, in the job's order.</param>
/// <param name="Comparisons">The comparisons, in the job's order.</param>
/// <param name="Work">Plans, proofs and joints.</param>
public sealed record JobOutcome(
    JobFolder Source, LensProfile? Lens, IReadOnlyList<StudiedPort> Ports, IReadOnlyList<PortComparison> Comparisons, JobWork Work);
