namespace SectionScan.Jobs.Progress;

/// <summary>How far a use case with several inputs has come.</summary>
/// <param name="Done">Inputs dealt with so far, whether usable or not.</param>
/// <param name="Total">Inputs in all.</param>
/// <param name="What">The input just dealt with, e.g. the photo's file name.</param>
public readonly record struct JobProgress(int Done, int Total, string What);
