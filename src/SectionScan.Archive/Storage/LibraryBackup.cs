using Dapper;
using Microsoft.Data.Sqlite;
using SectionScan.Metrology.Results;

namespace SectionScan.Archive.Storage;

/// <summary>Copies a library while it is in use, by SQLite's online backup.</summary>
internal static class LibraryBackup
{
    public static Result<long> Write(SqliteConnection connection, string path) => WholeFile.WriteAt(path, part =>
    {
        var settings = new SqliteConnectionStringBuilder { DataSource = part, Pooling = false };
        using var copy = new SqliteConnection(settings.ToString());
        copy.Open();
        connection.BackupDatabase(copy);

        // A single file, that can be carried away without its write-ahead log.
        copy.Execute("PRAGMA journal_mode = DELETE");
    });
}
