using SectionScan.Metrology.Results;

namespace SectionScan.Archive.Storage;

/// <summary>Writes a new file whole or not at all: beside its name first, then onto the disk, then to its name.</summary>
internal static class WholeFile
{
    private const int NoSpaceOnLinux = 28;
    private const int NoSpaceOnWindows = 112;

    /// <summary>Writes through a stream; gives the size.</summary>
    public static Result<long> Write(string path, Action<Stream> write) => WriteAt(path, part =>
    {
        using var file = new FileStream(part, FileMode.CreateNew, FileAccess.ReadWrite);
        write(file);
    });

    /// <summary>Writes at the path of the unfinished file; gives the size.</summary>
    public static Result<long> WriteAt(string path, Action<string> write)
    {
        var part = path + ".part";
        if (Problem(path) is { } unusable)
        {
            return unusable;
        }

        try
        {
            File.Delete(part);
            write(part);
            using (var file = File.OpenHandle(part, FileMode.Open, FileAccess.ReadWrite))
            {
                RandomAccess.FlushToDisk(file);
            }

            File.Move(part, path);
            return new FileInfo(path).Length;
        }
        catch (Microsoft.Data.Sqlite.SqliteException exception)
        {
            Discard(part);
            return SqliteProblems.From(path, exception);
        }
        catch (UnauthorizedAccessException)
        {
            Discard(part);
            return LibraryProblems.ReadOnly(path);
        }
        catch (IOException exception)
        {
            Discard(part);
            return (exception.HResult & 0xFFFF) is NoSpaceOnLinux or NoSpaceOnWindows
                ? LibraryProblems.DiskFull(path)
                : LibraryProblems.DiskFailed(path, exception.Message);
        }
    }

    private static Problem? Problem(string path)
    {
        if (path.Contains('\0', StringComparison.Ordinal))
        {
            return LibraryProblems.PathUnusable(path, "The path is not a path.");
        }

        var folder = Path.GetDirectoryName(Path.GetFullPath(path));
        return Path.Exists(path) ? LibraryProblems.PathUnusable(path, "There is already something at this path; it is not overwritten.")
            : Directory.Exists(folder) ? null
            : LibraryProblems.PathUnusable(path, $"There is no folder {folder}.");
    }

    private static void Discard(string part)
    {
        try
        {
            File.Delete(part);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // The problem that led here is told; a left-over .part file is overwritten the next time.
        }
    }
}
