using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Archive.Entries;

/// <summary>What can be wrong with keeping a photo or getting it back.</summary>
public static class PhotoProblems
{
    /// <summary>The file is far larger than a photo.</summary>
    public static Problem TooLarge(string path, long limitBytes) => new(
        "photo-too-large",
        string.Create(CultureInfo.InvariantCulture, $"The file is larger than {limitBytes / 1_000_000} MB."),
        path,
        "Give the photo that the section was digitised from; the entry refers to it by its hash in any case.");

    /// <summary>The entry came from another photo, or from none.</summary>
    public static Problem NotOfEntry(string entry, string name, string sha256, string? wanted) => new(
        "photo-not-of-entry",
        wanted is null ? "The section did not come from a photo."
        : $"{name} has the hash {sha256[..12]}…; the section came from the photo {wanted[..12]}…",
        entry,
        "Give the file that was digitised, unchanged: a photo saved again is another file.");

    /// <summary>No photo is kept for the entry.</summary>
    public static Problem NotKept(string entry, string? wanted) => new(
        "photo-not-kept",
        wanted is null ? "The section did not come from a photo." : $"The photo {wanted[..12]}… is referred to by its hash but not kept.",
        entry,
        "Keep it with: sectionscan library photo ENTRY --keep PHOTO");

    /// <summary>A name that is none.</summary>
    public static Problem NameUnusable(string name) => new(
        "photo-name-unusable", $"\"{name}\" is not a file's name.", name, "Give a file whose name has letters and an ending such as .jpg.");
}
