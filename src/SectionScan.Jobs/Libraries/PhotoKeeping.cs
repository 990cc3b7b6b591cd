using SectionScan.Archive.Entries;
using SectionScan.Archive.Library;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Libraries;

/// <summary>Keeps original photos in the library and writes them out again.</summary>
public static class PhotoKeeping
{
    // The library's own limit is lower; a file beyond this is not read at all.
    private const long LongestBytes = 200_000_000;

    /// <summary>Keeps a photo with one entry.</summary>
    /// <returns>Its SHA-256.</returns>
    public static Result<string> Keep(SectionLibrary library, long id, string path)
    {
        ArgumentNullException.ThrowIfNull(library);
        return Bytes(path).Then(content => library.KeepPhoto(id, Path.GetFileName(path), content));
    }

    /// <summary>Keeps a photo with the one of the entries that came from it.</summary>
    /// <returns>What stood in the way, or null.</returns>
    public static Problem? KeepFor(SectionLibrary library, IReadOnlyList<EntrySummary> entries, string path)
    {
        ArgumentNullException.ThrowIfNull(library);
        if (!TextFile.Sha256(path).TryGet(out var sha256, out var problem))
        {
            return problem;
        }

        return entries.FirstOrDefault(entry => entry.PhotoSha256 == sha256) is { } from
            ? Keep(library, from.Id, path).TryGet(out _, out problem) ? null : problem
            : LibraryUseProblems.PhotoOfNone(path);
    }

    /// <summary>Writes the photo of an entry into a folder, under the name that it was kept by.</summary>
    /// <returns>The file.</returns>
    public static Result<string> WriteOut(SectionLibrary library, long id, string folder)
    {
        ArgumentNullException.ThrowIfNull(library);
        return library.Photo(id).Then(photo => OutputFolder.Open(folder).Then(open => open.Write(photo.Name, stream => stream.Write(photo.Content.Span))));
    }

    private static Result<byte[]> Bytes(string path)
    {
        try
        {
            return !File.Exists(path) ? FileProblems.CannotRead(path, "there is no such file")
                : new FileInfo(path).Length > LongestBytes ? FileProblems.CannotRead(path, $"it is longer than {LongestBytes / 1_000_000} MB")
                : File.ReadAllBytes(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return FileProblems.CannotRead(path, e.Message);
        }
    }
}
