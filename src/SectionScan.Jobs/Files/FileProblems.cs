using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Files;

/// <summary>What can go wrong with files that are read or written.</summary>
public static class FileProblems
{
    /// <summary>A file or folder cannot be written.</summary>
    public static Problem CannotWrite(string where, string reason) => new(
        "cannot-write", $"The file or folder cannot be written ({reason}).", where, "Choose another folder with --out, or make room and check permissions.");

    /// <summary>A file cannot be read.</summary>
    public static Problem CannotRead(string where, string reason) => new(
        "cannot-read", $"The file cannot be read ({reason}).", where, "Check the name, the folder and the permissions.");
}
