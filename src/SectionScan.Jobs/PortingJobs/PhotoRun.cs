using SectionScan.Jobs.Digitising;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>What came of digitising a photo of a job once.</summary>
/// <param name="Outcome">Its sections, or why there are none.</param>
/// <param name="Folder">Where its documents lie, below the job's folder; no other run ever has it.</param>
public sealed record PhotoRun(PhotoOutcome Outcome, string Folder);
