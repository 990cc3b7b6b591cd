using OpenCvSharp;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Photos;

/// <summary>A photo as a person sees it: its size after EXIF orientation, and the way between displayed and measured pixels.</summary>
/// <param name="WidthPx">Width as displayed, px.</param>
/// <param name="HeightPx">Height as displayed, px.</param>
/// <param name="QuarterTurns">Quarter turns clockwise from the stored picture to the displayed one, 0 to 3.</param>
/// <param name="Extension">The usual ending of the file's format, told by its first bytes and never by its name: ".jpg".</param>
public sealed record PhotoView(int WidthPx, int HeightPx, int QuarterTurns, string Extension)
{
    private const int JpegQuality = 85;

    /// <summary>Looks at a file's header, within the limits that hold for every photo; its pixels are not decoded.</summary>
    /// <returns>The view, or one of <see cref="PhotoProblems"/>.</returns>
    public static Result<PhotoView> Read(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        byte[] bytes;
        try
        {
            var file = new FileInfo(path);
            if (!file.Exists)
            {
                return PhotoProblems.NotFound(path);
            }

            if (file.Length > Photo.MostBytes)
            {
                return PhotoProblems.FileTooLarge(path, file.Length, Photo.MostBytes);
            }

            bytes = File.ReadAllBytes(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return PhotoProblems.Unreadable(path, e.Message);
        }

        return PhotoHeader.Read(bytes, path).Then<PhotoView>(header =>
        {
            // Orientations 2, 4, 5 and 7 are mirrored; the photo is put right before it is measured, so that turns are left.
            var turns = header.Orientation switch
            {
                3 or 4 => 2,
                6 or 7 => 1,
                5 or 8 => 3,
                _ => 0,
            };
            var (width, height) = turns % 2 == 0
                ? (header.StoredWidthPx, header.StoredHeightPx)
                : (header.StoredHeightPx, header.StoredWidthPx);
            return ExtensionOf(bytes) is { } extension ? new PhotoView(width, height, turns, extension) : PhotoProblems.NotAPhoto(path);
        });
    }

    /// <summary>The photo upright and no larger than asked for, as a JPEG file's bytes.</summary>
    /// <param name="path">The file.</param>
    /// <param name="longestSidePx">The longest side of the picture, px.</param>
    public static Result<byte[]> Picture(string path, int longestSidePx)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentOutOfRangeException.ThrowIfLessThan(longestSidePx, 1);
        if (!Photo.Read(path).TryGet(out var photo, out var problem))
        {
            return problem;
        }

        using (photo)
        {
            var scale = Math.Min(1.0, longestSidePx / (double)Math.Max(photo.Colour.Width, photo.Colour.Height));
            using var picture = new Mat();
            Cv2.Resize(photo.Colour, picture, new Size(), scale, scale, InterpolationFlags.Area);
            for (var turn = 0; turn < photo.QuarterTurns; turn++)
            {
                Cv2.Rotate(picture, picture, RotateFlags.Rotate90Clockwise);
            }

            return picture.ImEncode(".jpg", new ImageEncodingParam(ImwriteFlags.JpegQuality, JpegQuality));
        }
    }

    /// <summary>Where a measured pixel is displayed.</summary>
    public PixelPoint ToDisplayed(PixelPoint stored)
    {
        var (width, height) = Stored;
        return StoredPixels.ToDisplayed(stored, QuarterTurns, width, height);
    }

    /// <summary>The measured pixel that is displayed at a place.</summary>
    public PixelPoint FromDisplayed(PixelPoint displayed)
    {
        var (width, height) = Stored;
        return StoredPixels.FromDisplayed(displayed, QuarterTurns, width, height);
    }

    private (int Width, int Height) Stored => QuarterTurns % 2 == 0 ? (WidthPx, HeightPx) : (HeightPx, WidthPx);

    private static string? ExtensionOf(ReadOnlySpan<byte> bytes) =>
        bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF]) ? ".jpg"
        : bytes.StartsWith((ReadOnlySpan<byte>)[0x89, (byte)'P', (byte)'N', (byte)'G']) ? ".png"
        : bytes.StartsWith("RIFF"u8) && bytes.Length > 12 && bytes[8..12].SequenceEqual("WEBP"u8) ? ".webp"
        : bytes.StartsWith("BM"u8) ? ".bmp"
        : ForeignFormat.IsAvif(bytes) ? ".avif"
        : ForeignFormat.IsHeif(bytes) ? ".heic"
        : ForeignFormat.IsDng(bytes) ? ".dng"
        : bytes.StartsWith("II*\0"u8) || bytes.StartsWith("MM\0*"u8) ? ".tif"
        : null;
}
