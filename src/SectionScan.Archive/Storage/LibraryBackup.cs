using Dapper;
using Microsoft.Data.Sqlite;
using SectionScan.Metrology.Results;

namespace SectionScan.Archive.Storage;

/// <summary>Copies a library while it is in use, by SQLite's online backup.</summary>
internal static class LibraryBackup
{
    /// <summary>Writes the copy beside its final name and moves it there when it is whole.</summary>
    public static Result<long> Write(SqliteConnection connection, string path)
    {
        var part = path + ".part";
        try
        {
            if (Path.Exists(path))
            {
                return LibraryProblems.PathUnusable(path, "There is already something at this path.");
            }

            if (Path.GetDirectoryName(Path.GetFullPath(path)) is var folder && !Directory.Exists(folder))
            {
                return LibraryProblems.PathUnusable(path, $"There is no folder {folder}.");
            }

            File.Delete(part);
            Copy(connection, part);
            using (var copy = File.OpenHandle(part, FileMode.Open, FileAccess.ReadWrite))
            {
                RandomAccess.FlushToDisk(copy);
            }

            File.Move(part, path);
            return new FileInfo(path).Length;
        }
        catch (SqliteException exception)
        {
            Discard(part);
            return SqliteProblems.From(path, exception);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            Discard(part);
            return LibraryProblems.DiskFailed(path, exception.Message);
        }
    }

    private static void Copy(SqliteConnection connection, string part)
    {
        var settings = new SqliteConnectionStringBuilder { DataSource = part, Pooling = false };
        using var copy = new SqliteConnection(settings.ToString());
        copy.Open();
        connection.BackupDatabase(copy);

        // A single file, that can be carried away without its write-ahead log.
        copy.Execute("PRAGMA journal_mode = DELETE");
    }

    private static void Discard(string part)
    {
        try
        {
            File.Delete(part);
        }
        catch (IOException)
        {
            // The problem that led here is told; a left-over .part file is overwritten by the next backup.
        }
    }
}
