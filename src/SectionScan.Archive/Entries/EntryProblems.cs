using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Archive.Entries;

/// <summary>What can be wrong with an entry or with the wish to change one.</summary>
public static class EntryProblems
{
    /// <summary>A port's name that is none.</summary>
    public static Problem PortNameUnusable(string text) => new(
        "port-name-unusable",
        $"\"{text}\" does not name a port.",
        "port",
        "Write intake or exhaust, the cylinder's number, and a mark where there are several: \"intake 1\", \"exhaust 2 left\".");

    /// <summary>A path that is none.</summary>
    public static Problem PathUnusable(string path) => new(
        "section-path-unusable",
        $"\"{path}\" does not name a section in the library.",
        "entry",
        "Give the entry's number, or its path: \"Bramble 480 twin/intake 1/station 3\".");

    /// <summary>A name or text that cannot be kept.</summary>
    public static Problem TextUnusable(string where, string what) => new(
        "entry-text-unusable",
        what,
        where,
        "Shorten or rewrite it; names hold letters, digits, spaces and signs but no slash and no line break.");

    /// <summary>A number that cannot be kept.</summary>
    public static Problem NumberUnusable(string where, string what) => new(
        "entry-number-unusable", what, where, "Give a plain number within the range.");

    /// <summary>There is no such entry.</summary>
    public static Problem NotFound(string library, string entry) => new(
        "entry-not-found",
        $"There is no entry {entry}.",
        library,
        "List the library to see what it holds; removed entries are listed on request.");

    /// <summary>The place is taken by another entry.</summary>
    public static Problem PlaceTaken(string library, string path, long id) => new(
        "entry-place-taken",
        string.Create(CultureInfo.InvariantCulture, $"Entry {id} already stands at \"{path}\"."),
        library,
        string.Create(CultureInfo.InvariantCulture, $"Revise entry {id}, remove it first, or name a stage such as \"finished\" to keep both."));

    /// <summary>The same entry was changed here and elsewhere, each in its own way.</summary>
    public static Problem HistoriesDiverge(string library, string path, long id) => new(
        "entry-histories-diverge",
        string.Create(CultureInfo.InvariantCulture, $"Entry {id}, \"{path}\", was changed here and in the other library, each in its own way."),
        library,
        string.Create(CultureInfo.InvariantCulture, $"Leave it out (--skip-taken) and correct entry {id} by hand, or remove entry {id} for good reason and agree on one."));

    /// <summary>The entry is removed and so cannot be changed.</summary>
    public static Problem IsRemoved(string library, long id) => new(
        "entry-is-removed",
        string.Create(CultureInfo.InvariantCulture, $"Entry {id} is marked as removed."),
        library,
        "Restore it first.");

    /// <summary>The entry is not removed, so it cannot be restored.</summary>
    public static Problem IsNotRemoved(string library, long id) => new(
        "entry-is-not-removed",
        string.Create(CultureInfo.InvariantCulture, $"Entry {id} is not removed, so there is nothing to restore."),
        library,
        "Leave it as it is.");

    /// <summary>A change without a reason.</summary>
    public static Problem ReasonMissing(string library, long id) => new(
        "entry-reason-missing",
        string.Create(CultureInfo.InvariantCulture, $"The change of entry {id} has no reason."),
        library,
        "Say in a few words why it is changed; the history keeps it.");

    /// <summary>Somebody else changed the entry in the meantime.</summary>
    public static Problem ChangedMeanwhile(string library, long id, int basedOn, int current) => new(
        "entry-changed-meanwhile",
        string.Create(CultureInfo.InvariantCulture, $"Entry {id} is at revision {current}; the change was made on revision {basedOn}."),
        library,
        "Look at the entry again and repeat the change if it is still wanted.");
}
