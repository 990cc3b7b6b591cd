using SectionScan.Archive.Library;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;

namespace SectionScan.Jobs.Libraries;

/// <summary>A reference section library as a file that a command opens, uses and closes.</summary>
public static class LibrarySource
{
    /// <summary>The library's file name when none is given.</summary>
    public const string DefaultFileName = "sectionscan-library.db";

    /// <summary>Opens the library, does something with it and closes it.</summary>
    /// <param name="path">The library's file; made when it is not there.</param>
    /// <param name="time">The clock.</param>
    /// <param name="use">What is done.</param>
    public static Result<T> Use<T>(string path, TimeProvider time, Func<SectionLibrary, Result<T>> use)
        where T : notnull
    {
        ArgumentNullException.ThrowIfNull(use);
        if (!SectionLibrary.Open(path, time).TryGet(out var library, out var problem))
        {
            return problem;
        }

        using (library)
        {
            return use(library);
        }
    }

    /// <summary>The newest document of an entry, and the entry's path.</summary>
    /// <param name="library">The library.</param>
    /// <param name="entry">Its number or its path.</param>
    public static Result<(SectionDocument Document, string Path)> Document(SectionLibrary library, string entry)
    {
        ArgumentNullException.ThrowIfNull(library);
        return library.Find(entry).Then(library.Show).Then(found =>
            found.ReadDocument().Then<(SectionDocument, string)>(document => (document, found.Summary.Place.Path)));
    }
}
