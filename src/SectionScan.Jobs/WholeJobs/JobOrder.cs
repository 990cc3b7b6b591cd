using SectionScan.Drawings.Sections;

namespace SectionScan.Jobs.WholeJobs;

/// <summary>Which job is run, and where its results go.</summary>
/// <param name="JobPath">The job document.</param>
/// <param name="OutputFolder">The folder for all results; those of an earlier run are replaced.</param>
/// <param name="Program">Name and version of the program, for the documents.</param>
public sealed record JobOrder(string JobPath, string OutputFolder, string Program)
{
    /// <summary>What report and drawings show; documents and tables for programs stay in mm.</summary>
    public LengthUnit Unit { get; init; }
}
