using System.Diagnostics.CodeAnalysis;
using Dapper;
using Microsoft.Data.Sqlite;
using SectionScan.Metrology.Results;

namespace SectionScan.Archive.Storage;

/// <summary>An open library file. Everything that the database or the disk refuses comes out as a problem, and nothing of a
/// refused change stays.</summary>
internal sealed class LibraryConnection : IDisposable
{
    // Long enough for another process's import, short enough for a person to wait.
    private const int WaitSeconds = 15;

    private readonly SqliteConnection connection;

    private LibraryConnection(string path, SqliteConnection connection)
    {
        Path = path;
        this.connection = connection;
    }

    public string Path { get; }

    [SuppressMessage("IDisposableAnalyzers.Correctness", "IDISP005", Justification = "The caller takes the connection out of the result and disposes it.")]
    public static Result<LibraryConnection> Open(string path)
    {
        if (PathProblem(path) is { } unusable)
        {
            return unusable;
        }

        var settings = new SqliteConnectionStringBuilder
        {
            DataSource = System.IO.Path.GetFullPath(path),
            Mode = SqliteOpenMode.ReadWriteCreate,
            ForeignKeys = true,
            DefaultTimeout = WaitSeconds,
            Pooling = false,
        };
        var connection = new SqliteConnection(settings.ToString());
        Problem? problem;
        try
        {
            connection.Open();
            problem = Prepare(path, connection);
        }
        catch (SqliteException exception)
        {
            problem = SqliteProblems.From(path, exception);
        }

        if (problem is not null)
        {
            connection.Dispose();
        }

        return problem is null ? new LibraryConnection(path, connection) : problem;
    }

    /// <summary>Reads from one state of the library, whatever others write meanwhile.</summary>
    public Result<T> Read<T>(Func<SqliteConnection, Result<T>> work)
        where T : notnull => InTransaction(deferred: true, work);

    /// <summary>Writes all or nothing; on return of a value it is on the disk.</summary>
    public Result<T> Write<T>(Func<SqliteConnection, Result<T>> work)
        where T : notnull => InTransaction(deferred: false, work);

    /// <summary>Works without a transaction of its own.</summary>
    public Result<T> Use<T>(Func<SqliteConnection, Result<T>> work)
        where T : notnull
    {
        try
        {
            return work(connection);
        }
        catch (SqliteException exception)
        {
            return SqliteProblems.From(Path, exception);
        }
    }

    public void Dispose() => connection.Dispose();

    private static Problem? PathProblem(string path)
    {
        if (string.IsNullOrWhiteSpace(path) || path.Contains('\0', StringComparison.Ordinal))
        {
            return LibraryProblems.PathUnusable(path, "The path is empty or not a path.");
        }

        if (Directory.Exists(path))
        {
            return LibraryProblems.PathUnusable(path, "The path is a folder.");
        }

        var folder = System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(path));
        return Directory.Exists(folder) ? null : LibraryProblems.PathUnusable(path, $"There is no folder {folder}.");
    }

    private static Problem? Prepare(string path, SqliteConnection connection)
    {
        // In one transaction: between two single questions another process may make the library.
        using (connection.BeginTransaction(deferred: true))
        {
            if (FormProblem(path, connection) is { } foreign)
            {
                return foreign;
            }
        }

        // A write-ahead log lets others read while one writes; FULL puts each confirmed change on the disk before it is confirmed.
        connection.Execute("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;");
        if (connection.ExecuteScalar<int>("PRAGMA user_version") == LibrarySchema.Version)
        {
            return null;
        }

        using var transaction = connection.BeginTransaction(deferred: false);

        // Another process may have done it while this one waited.
        if (FormProblem(path, connection) is { } overtaken)
        {
            return overtaken;
        }

        for (var version = connection.ExecuteScalar<int>("PRAGMA user_version"); version < LibrarySchema.Version; version++)
        {
            connection.Execute(LibrarySchema.Steps[version], transaction: transaction);
        }

        connection.Execute(FormattableString.Invariant(
            $"PRAGMA application_id = {LibrarySchema.ApplicationId}; PRAGMA user_version = {LibrarySchema.Version};"), transaction: transaction);
        transaction.Commit();
        return null;
    }

    private static Problem? FormProblem(string path, SqliteConnection connection)
    {
        var application = connection.ExecuteScalar<long>("PRAGMA application_id");
        var version = connection.ExecuteScalar<long>("PRAGMA user_version");
        var isEmpty = application == 0 && version == 0 && connection.ExecuteScalar<long>("SELECT count(*) FROM sqlite_schema") == 0;
        return isEmpty ? null
            : application != LibrarySchema.ApplicationId ? LibraryProblems.NotALibrary(path)
            : version > LibrarySchema.Version ? LibraryProblems.LaterVersion(path, version, LibrarySchema.Version)
            : null;
    }

    private Result<T> InTransaction<T>(bool deferred, Func<SqliteConnection, Result<T>> work)
        where T : notnull => Use(open =>
        {
            using var transaction = open.BeginTransaction(deferred);
            var result = work(open);
            if (result.IsSuccess)
            {
                transaction.Commit();
            }

            return result;
        });
}
