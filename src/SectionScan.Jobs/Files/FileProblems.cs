using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Files;

/// <summary>What can go wrong with files that are read or written.</summary>
public static class FileProblems
{
    /// <summary>A file or folder cannot be written.</summary>
    public static Problem CannotWrite(string where, string reason) => new(
        "cannot-write", $"The file or folder cannot be written ({reason}).", where, "Choose another folder with --out, or make room and check permissions.");

    /// <summary>Something else has the name that is to be written to.</summary>
    public static Problem NotReplaced(string where) => new(
        "not-replaced", "There is a file of this name with other contents; it is not overwritten.", where,
        "Choose another folder with --out, or give --replace to put the new one in its place.");

    /// <summary>A file cannot be read.</summary>
    public static Problem CannotRead(string where, string reason) => new(
        "cannot-read", $"The file cannot be read ({reason}).", where, "Check the name, the folder and the permissions.");
}
