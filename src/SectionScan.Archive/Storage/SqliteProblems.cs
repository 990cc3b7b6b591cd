using Microsoft.Data.Sqlite;
using SectionScan.Metrology.Results;

namespace SectionScan.Archive.Storage;

/// <summary>From SQLite's result codes (sqlite.org/rescode.html) to problems.</summary>
internal static class SqliteProblems
{
    private const int Permission = 3;
    private const int Busy = 5;
    private const int Locked = 6;
    private const int ReadOnly = 8;
    private const int InputOutput = 10;
    private const int Corrupt = 11;
    private const int Full = 13;
    private const int CannotOpen = 14;
    private const int NotADatabase = 26;
    private const int SharedMemorySize = InputOutput | (19 << 8);

    public static Problem From(string path, SqliteException exception) => exception.SqliteErrorCode switch
    {
        Busy or Locked => LibraryProblems.Busy(path),
        Full => LibraryProblems.DiskFull(path),

        // The index of the write-ahead log could not grow, for which the disk has always been too full.
        InputOutput when exception.SqliteExtendedErrorCode == SharedMemorySize => LibraryProblems.DiskFull(path),
        InputOutput => LibraryProblems.DiskFailed(path, exception.Message),
        Corrupt => LibraryProblems.Damaged(path, exception.Message),
        NotADatabase => LibraryProblems.NotALibrary(path),
        ReadOnly or Permission => LibraryProblems.ReadOnly(path),
        CannotOpen => LibraryProblems.PathUnusable(path, "The file cannot be opened."),
        _ => LibraryProblems.Refused(path, exception.SqliteErrorCode, exception.Message),
    };
}
