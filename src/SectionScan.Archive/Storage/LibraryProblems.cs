using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Archive.Storage;

/// <summary>What can be wrong with the library's file.</summary>
public static class LibraryProblems
{
    /// <summary>The path cannot hold a library.</summary>
    public static Problem PathUnusable(string path, string reason) => new(
        "library-path-unusable", reason, path, "Give the path of a file in a folder that exists and may be written to.");

    /// <summary>The file is something else.</summary>
    public static Problem NotALibrary(string path) => new(
        "not-a-library", "The file is not a section library.", path, "Give the path of a section library, or of a file that does not exist yet.");

    /// <summary>Written by a later version.</summary>
    public static Problem LaterVersion(string path, long version, int known) => new(
        "library-later-version",
        string.Create(CultureInfo.InvariantCulture, $"The library has the form {version}; this program knows forms up to {known}."),
        path,
        "Install the newer SectionScan that wrote it. The library has not been touched.");

    /// <summary>The file is damaged.</summary>
    public static Problem Damaged(string path, string detail) => new(
        "library-damaged",
        $"The library's file is damaged ({detail}).",
        path,
        "Keep a copy of the file, then go back to the last backup; sections can also be added again from their documents.");

    /// <summary>Another program holds the library.</summary>
    public static Problem Busy(string path) => new(
        "library-busy",
        "Another program has been writing to the library for too long.",
        path,
        "Wait until it is done and repeat the command. Nothing has been changed.");

    /// <summary>The disk is full.</summary>
    public static Problem DiskFull(string path) => new(
        "library-disk-full", "The disk is full.", path, "Make room on the disk and repeat the command. Nothing has been changed.");

    /// <summary>The disk refused.</summary>
    public static Problem DiskFailed(string path, string detail) => new(
        "library-disk-failed",
        $"The disk refused to read or write ({detail}).",
        path,
        "Check that the disk is connected and has room, and repeat the command. Nothing has been changed.");

    /// <summary>The file may not be written.</summary>
    public static Problem ReadOnly(string path) => new(
        "library-read-only",
        "The library or its folder may not be written to.",
        path,
        "Copy the library to a folder of your own, or ask for the right to write there.");

    /// <summary>Anything else that the database refuses.</summary>
    public static Problem Refused(string path, int code, string detail) => new(
        "library-refused",
        string.Create(CultureInfo.InvariantCulture, $"The database refused with code {code} ({detail})."),
        path,
        "Repeat the command; if it fails again, check the library's integrity and keep a copy of the file.");
}
