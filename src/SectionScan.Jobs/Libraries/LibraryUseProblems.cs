using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Libraries;

/// <summary>What can be wrong with the wish to use or correct entries of a library.</summary>
public static class LibraryUseProblems
{
    /// <summary>The entry has no such revision.</summary>
    public static Problem RevisionNotFound(string entry, int revision, int newest) => new(
        "revision-not-found",
        string.Create(CultureInfo.InvariantCulture, $"There is no revision {revision}; the newest is {newest}."),
        entry,
        "Look at the entry's history and give the number of one of its revisions.");

    /// <summary>The tag to be taken away is not there.</summary>
    public static Problem TagNotThere(string entry, string tag) => new(
        "tag-not-there", $"The entry has no tag \"{tag}\".", entry, "Show the entry to see its tags.");

    /// <summary>The number to be taken away is not there.</summary>
    public static Problem FieldNotThere(string entry, string field) => new(
        "field-not-there", $"The entry has no number named \"{field}\".", entry, "Show the entry to see its numbers.");

    /// <summary>Nothing would be different.</summary>
    public static Problem ChangesNothing(string entry) => new(
        "correction-changes-nothing", "The correction would change nothing.", entry, "Say what is to be different; the entry has been left as it is.");

    /// <summary>No entry is chosen.</summary>
    public static Problem NothingChosen(string library) => new(
        "no-entry-chosen", "No entry of the library is so.", library, "List the library with the same choice to see what it holds.");

    /// <summary>A photo that none of the sections came from.</summary>
    public static Problem PhotoOfNone(string path) => new(
        "photo-of-no-section",
        "None of the sections came from this photo, so it is not kept.",
        path,
        "Give the file that was digitised, unchanged: a photo saved again is another file.");

    /// <summary>There is no library to use.</summary>
    public static Problem NoLibrary(string path) => new(
        "no-library", "There is no such library.", path, "Give the library's file with --library, or add a section first: that makes one.");

    /// <summary>The library does not agree with itself.</summary>
    public static Problem NotSound(string path, IReadOnlyList<string> findings) => new(
        "library-not-sound",
        $"The library is not sound: {string.Join(' ', findings)}",
        path,
        "Keep a copy of the file as it is, then go back to the last backup; sections can also be added again from their documents.");
}
