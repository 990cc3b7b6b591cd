using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.WholeJobs;

/// <summary>What can stand in the way of a job once its document is read.</summary>
public static class JobProblems
{
    /// <summary>A file that the job names is not there.</summary>
    public static Problem FileMissing(string where, string name) => new(
        "job-file-missing", $"The job names the file \"{name}\", which is not there.", where,
        "Copy the file beside the job document, or correct its name there.");

    /// <summary>An object on a photo could not be measured, so that the port lacks a section.</summary>
    public static Problem SectionRefused(string photo, Problem refused)
    {
        ArgumentNullException.ThrowIfNull(refused);
        return refused with { Where = photo };
    }

    /// <summary>A section was aligned by hand at a station that the two ports do not share.</summary>
    public static Problem StationNotShared(string where, int station, IReadOnlyList<int> stations) => new(
        "job-comparison-station", FormattableString.Invariant($"Station {station} was aligned by hand, but is not one that both ports have."), where,
        $"Name one of these: {string.Join(", ", stations)}.");

    /// <summary>A joint names a station that the port does not have.</summary>
    public static Problem StationUnknown(string where, int station, IReadOnlyList<int> stations) => new(
        "job-joint-station", FormattableString.Invariant($"The port has no station {station}."), where,
        $"Name one of these: {string.Join(", ", stations)}.");
}
