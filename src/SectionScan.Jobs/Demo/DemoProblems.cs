using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Demo;

/// <summary>What can keep the demonstration from running.</summary>
public static class DemoProblems
{
    /// <summary>There are no sample photographs.</summary>
    public static Problem NoPhotos(string where) => new(
        "demo-photos-not-found",
        "The folder sample-images is neither here nor beside the program.",
        where,
        "Run the demonstration from the folder of the repository, or name the folder of the sample photographs with --photos DIR.");

    /// <summary>Some of the sample photographs are missing.</summary>
    public static Problem PhotosMissing(string where, IReadOnlyList<string> missing) => new(
        "demo-photos-missing",
        $"The folder does not hold {string.Join(", ", missing)}.",
        where,
        "Name the folder of the sample photographs with --photos DIR, or fetch the repository again.");

    /// <summary>The ports have no station in common.</summary>
    public static Problem NoStations(string where) => new(
        "demo-no-stations",
        "The photographs of the exemplar and of the finished port show no station in common.",
        where,
        "Name the folder of the sample photographs with --photos DIR; other photographs need not show the same job.");
}
