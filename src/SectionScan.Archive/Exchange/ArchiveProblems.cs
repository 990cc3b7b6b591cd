using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Archive.Exchange;

/// <summary>What can be wrong with an archive file.</summary>
public static class ArchiveProblems
{
    /// <summary>The file is not there or cannot be read.</summary>
    public static Problem Unreadable(string path, string detail) => new(
        "archive-unreadable", $"The archive file cannot be read ({detail}).", path, "Check the path, and copy the file again from where it was made.");

    /// <summary>The file is something else, or cut off.</summary>
    public static Problem NotAnArchive(string path) => new(
        "not-an-archive",
        "The file is not an archive of sections, or it is cut off.",
        path,
        "Copy the file again from where it was made, and check that it is one that SectionScan exported.");

    /// <summary>Written by a later version.</summary>
    public static Problem LaterVersion(string path, string schema) => new(
        "archive-later-version",
        $"The archive is \"{schema}\"; this program reads up to \"{ArchiveManifest.SchemaNameWithPhotos}\".",
        path,
        "Install the newer SectionScan that wrote it.");

    /// <summary>The table of contents is not as the format says.</summary>
    public static Problem ManifestUnusable(string path, string what) => new(
        "archive-manifest-unusable", $"{what}", path, "Export the sections again. Nothing has been imported.");

    /// <summary>A file with a name that no archive holds.</summary>
    public static Problem NameUnusable(string path, string name) => new(
        "archive-name-unusable",
        $"The archive holds a file named \"{name}\", which no archive of sections does.",
        path,
        "Do not use this file unless you know who made it. Nothing has been imported.");

    /// <summary>A file is too large.</summary>
    public static Problem TooLarge(string path, string name, long limitBytes) => new(
        "archive-too-large",
        string.Create(CultureInfo.InvariantCulture, $"\"{name}\" is larger than {limitBytes / 1_000_000} MB."),
        path,
        "Do not use this file unless you know who made it. Nothing has been imported.");

    /// <summary>A file is not what it was when it was exported.</summary>
    public static Problem HashWrong(string path, string name) => new(
        "archive-hash-wrong",
        $"\"{name}\" is not what it was when the archive was made.",
        path,
        "Copy the file again from where it was made. Nothing has been imported.");
}
