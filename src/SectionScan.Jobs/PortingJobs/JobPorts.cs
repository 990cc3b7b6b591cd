using SectionScan.Archive.Entries;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Libraries;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>Ports that a job can work with: its own, each the sections of one stage, and those of the library, each the entries of one head,
/// port and stage.</summary>
public static class JobPorts
{
    private const string StagePrefix = "stage:";
    private const string LibraryPrefix = ComparisonChoice.LibraryPrefix;

    /// <summary>The key of a stage's port.</summary>
    public static string KeyOf(string stage) => StagePrefix + stage;

    /// <summary>The job's own ports, in the order of their photos.</summary>
    public static IReadOnlyList<(string Key, string Name)> Own(PortingJob job)
    {
        ArgumentNullException.ThrowIfNull(job);
        return [.. job.Sections.GroupBy(job.StageOf).Select(group => (
            KeyOf(group.Key),
            FormattableString.Invariant($"{(group.Key.Length == 0 ? "no stage told" : group.Key)} ({group.Count()} section{(group.Count() == 1 ? string.Empty : "s")})")))];
    }

    /// <summary>The library's ports.</summary>
    /// <param name="entries">Its entries.</param>
    public static IReadOnlyList<(string Key, string Name)> OfLibrary(IEnumerable<EntrySummary> entries) =>
        [.. entries.GroupBy(PathOf).Select(group => (
            LibraryPrefix + group.Key, FormattableString.Invariant($"{group.Key} ({group.Count()} section{(group.Count() == 1 ? string.Empty : "s")})")))];

    /// <summary>What to call a port.</summary>
    public static string NameOf(string key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return key[(key.IndexOf(':', StringComparison.Ordinal) + 1)..] is { Length: > 0 } name ? name : "no stage told";
    }

    /// <summary>Reads the sections of a port.</summary>
    /// <param name="folder">The job's folder.</param>
    /// <param name="job">The job.</param>
    /// <param name="key">The port's key.</param>
    /// <param name="libraryPath">The library's file.</param>
    /// <param name="time">The clock.</param>
    /// <returns>One section or more; <c>port-gone</c> when the port is no longer there.</returns>
    public static Result<IReadOnlyList<SectionInput>> Read(JobFolder folder, PortingJob job, string key, string libraryPath, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(key);
        var read = key.StartsWith(LibraryPrefix, StringComparison.Ordinal)
            ? FromLibrary(key[LibraryPrefix.Length..], libraryPath, time)
            : Result.All(job.Sections.Where(section => KeyOf(job.StageOf(section)) == key).Select(section =>
                SectionInput.Read(folder.PathOf(section.DocumentFile), libraryPath, time)
                    .Then<SectionInput>(input => input with { Name = job.NameOf(section) })));
        return read.Then<IReadOnlyList<SectionInput>>(sections => sections.Count > 0 ? sections.ToList() : JobProblems.PortGone(NameOf(key)));
    }

    /// <summary>Sets two ports beside each other, as the drift command does: the second laid on the first at every station that both have.</summary>
    /// <param name="folder">The job's folder.</param>
    /// <param name="job">The job.</param>
    /// <param name="first">The first port's key: the reference.</param>
    /// <param name="second">The second port's key.</param>
    /// <param name="choice">How sections are laid on each other.</param>
    /// <param name="libraryPath">The library's file.</param>
    /// <param name="time">The clock.</param>
    public static Result<IReadOnlyList<SectionComparison>> Beside(
        JobFolder folder, PortingJob job, string first, string second, AlignmentChoice choice, string libraryPath, TimeProvider time) =>
        Read(folder, job, first, libraryPath, time).Then(one => Read(folder, job, second, libraryPath, time).Then(other =>
            StageDrift.OfStages([(NameOf(first), one), (NameOf(second), other)], choice).Then<IReadOnlyList<SectionComparison>>(stations =>
                stations.Select(station => station.Stages[0].FromFirst).ToList())));

    private static Result<IReadOnlyList<SectionInput>> FromLibrary(string path, string libraryPath, TimeProvider time) =>
        LibrarySource.UseExisting(libraryPath, time, library => library.List().Then(entries =>
            Result.All(entries.Where(entry => PathOf(entry) == path).Select(entry => library.Show(entry.Id).Then(SectionInput.From)))));

    private static string PathOf(EntrySummary entry) => $"{entry.Place.Head}/{entry.Place.Port}/{entry.Place.Stage}";
}
