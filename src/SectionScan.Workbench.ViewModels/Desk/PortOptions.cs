using SectionScan.Archive.Entries;
using SectionScan.Jobs.Libraries;
using SectionScan.Jobs.PortingJobs;

namespace SectionScan.Workbench.ViewModels.Desk;

/// <summary>The ports that a person can choose between.</summary>
/// <param name="Own">Those of the job.</param>
/// <param name="Library">Those of the library; empty when there is none.</param>
public sealed record PortOptions(IReadOnlyList<(string Key, string Name)> Own, IReadOnlyList<(string Key, string Name)> Library)
{
    /// <summary>Looks at the job and into the library.</summary>
    public static PortOptions Of(LiveJob? live, JobDesk desk)
    {
        ArgumentNullException.ThrowIfNull(desk);
        return new(live is null ? [] : JobPorts.Own(live.Job), JobPorts.OfLibrary(EntriesOf(desk)));
    }

    private static IReadOnlyList<EntrySummary> EntriesOf(JobDesk desk) => File.Exists(desk.LibraryPath)
        && LibrarySource.Use(desk.LibraryPath, desk.Time, library => library.List()).TryGet(out var found, out _) ? found : [];
}
