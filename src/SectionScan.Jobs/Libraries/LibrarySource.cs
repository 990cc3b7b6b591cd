using SectionScan.Archive.Library;
using SectionScan.Metrology.Results;

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

    /// <summary>The same for a library that must be there already: none is made.</summary>
    public static Result<T> UseExisting<T>(string path, TimeProvider time, Func<SectionLibrary, Result<T>> use)
        where T : notnull => File.Exists(path) || Directory.Exists(path) ? Use(path, time, use) : LibraryUseProblems.NoLibrary(path);
}
