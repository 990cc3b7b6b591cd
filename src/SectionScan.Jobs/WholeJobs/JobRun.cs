namespace SectionScan.Jobs.WholeJobs;

/// <summary>A finished run of a job.</summary>
/// <param name="Outcome">What it gave.</param>
/// <param name="HtmlPath">Full path of the report to read on a screen.</param>
/// <param name="PdfPath">Full path of the report to print.</param>
/// <param name="Record">What went in and what came out, by checksum.</param>
/// <param name="Repetition">How it compares with the run before it in the same folder.</param>
public sealed record JobRun(JobOutcome Outcome, string HtmlPath, string PdfPath, JobRecord Record, JobRepetition Repetition);
