namespace SectionScan.Jobs.PortingJobs;

/// <summary>One section of a job.</summary>
/// <param name="Id">Its name in the job: the photo's and a number.</param>
/// <param name="PhotoId">The photo that it came from.</param>
/// <param name="DocumentFile">Its section document, below the job's folder. A correction makes a new file, so that an older state of
/// the job still finds its own.</param>
/// <param name="Station">Its station, or null while nobody told it.</param>
/// <param name="Corrections">How many corrections by hand the document holds.</param>
public sealed record JobSection(string Id, string PhotoId, string DocumentFile, int? Station, int Corrections = 0);
