using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Photos;

/// <summary>What can be wrong with a photo as a file.</summary>
public static class PhotoProblems
{
    /// <summary>There is no such file.</summary>
    public static Problem NotFound(string where) => new(
        "photo-not-found", "There is no such file.", where, "Check the name and the folder.");

    /// <summary>A folder was given where a photo was expected.</summary>
    public static Problem IsDirectory(string where) => new(
        "photo-is-a-folder", "This is a folder, not a photo.", where, "Name the photos in it, for example with a pattern such as *.jpg.");

    /// <summary>The operating system refused to read the file.</summary>
    public static Problem Unreadable(string where, string reason) => new(
        "photo-unreadable", $"The file cannot be read ({reason}).", where, "Check its permissions, or copy it to another folder.");

    /// <summary>The file is larger than any photo should be.</summary>
    public static Problem FileTooLarge(string where, long bytes, long most) => new(
        "photo-file-too-large",
        string.Create(CultureInfo.InvariantCulture, $"The file has {bytes / 1e6:0} MB; at most {most / 1e6:0} MB are read."),
        where,
        "Give the photo as the phone or camera saved it (JPEG), not a collection or a raw scan.");

    /// <summary>The file is in no picture format that is read here.</summary>
    public static Problem NotAPhoto(string where) => new(
        "not-a-photo",
        "The file is not a picture in a format that can be read (JPEG, HEIC, AVIF, DNG, PNG, TIFF, BMP, WebP).",
        where,
        "Give the original photo. On a phone, set the camera to save JPEG (\"most compatible\").");

    /// <summary>A phone's HEIC or AVIF file that cannot be read.</summary>
    public static Problem IsHeif(string where, string detail) => new(
        "photo-is-heic",
        $"This is a HEIC (or AVIF) photo that cannot be read: {detail}.",
        where,
        "Set the phone's camera to save JPEG (in its settings under formats, often called \"most compatible\") and retake; or let the phone send or export the photo as JPEG at full size.");

    /// <summary>A raw file that cannot be read.</summary>
    public static Problem IsDng(string where, string detail) => new(
        "photo-is-raw",
        $"This is a raw photo (DNG) that cannot be read: {detail}.",
        where,
        "Switch raw off in the camera, or have it save raw and JPEG together and give the JPEG; or develop the raw file to a TIFF or JPEG at full size without lens correction.");

    /// <summary>The header tells of more pixels than are decoded.</summary>
    public static Problem TooManyPixels(string where, long widthPx, long heightPx, long mostPx) => new(
        "photo-too-many-pixels",
        string.Create(CultureInfo.InvariantCulture, $"The picture is {widthPx} × {heightPx} px; at most {mostPx / 1e6:0} megapixels are decoded."),
        where,
        "Give the photo at the camera's own size.");

    /// <summary>The picture is too small to hold a target.</summary>
    public static Problem TooFewPixels(string where, int widthPx, int heightPx, int leastPx) => new(
        "photo-too-small",
        string.Create(CultureInfo.InvariantCulture, $"The picture is only {widthPx} × {heightPx} px; each side needs at least {leastPx} px."),
        where,
        "Give the photo as the camera saved it, not a preview or a message's copy.");

    /// <summary>The pixel data is cut short or broken.</summary>
    public static Problem Damaged(string where, string detail) => new(
        "photo-damaged", $"The picture is damaged: {detail}.", where, "Copy it from the camera again, or retake it.");
}
