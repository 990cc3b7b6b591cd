using System.Globalization;
using SectionScan.Metrology.Results;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Metadata.Profiles.Exif;

namespace SectionScan.Imaging.Photos;

/// <summary>What a photo's header says, read before a single pixel is decoded.</summary>
/// <param name="StoredWidthPx">Width as stored, px.</param>
/// <param name="StoredHeightPx">Height as stored, px.</param>
/// <param name="Orientation">EXIF orientation, 1 to 8; 1 when absent or absurd.</param>
/// <param name="Focal35Mm">EXIF FocalLengthIn35mmFilm within 8 to 1000, else null.</param>
/// <param name="Camera">Maker and model, or null.</param>
/// <param name="TakenAt">Date and time of the shot in ISO 8601 without zone, or null.</param>
internal sealed record PhotoHeader(
    int StoredWidthPx, int StoredHeightPx, int Orientation, double? Focal35Mm, string? Camera, string? TakenAt)
{
    /// <summary>The most pixels that are decoded: a 100-megapixel camera, with room.</summary>
    public const long MostPixels = 120_000_000;

    /// <summary>The least side of a photo in which a target can be found.</summary>
    public const int LeastSidePx = 300;

    /// <summary>Reads the header.</summary>
    public static Result<PhotoHeader> Read(byte[] bytes, string where)
    {
        if (ForeignFormat.IsHeif(bytes) || ForeignFormat.IsDng(bytes))
        {
            return PhonePicture.Header(bytes, ForeignFormat.IsDng(bytes), where)
                .Then(picture => Of(picture.WidthPx, picture.HeightPx, () => Exif(picture.Exif), where));
        }

        var info = Guarded(() => Image.Identify(bytes));
        return info is null ? PhotoProblems.NotAPhoto(where) : Of(info.Width, info.Height, () => info.Metadata.ExifProfile, where);
    }

    private static Result<PhotoHeader> Of(int widthPx, int heightPx, Func<ExifProfile?> read, string where)
    {
        if ((long)widthPx * heightPx > MostPixels)
        {
            return PhotoProblems.TooManyPixels(where, widthPx, heightPx, MostPixels);
        }

        if (Math.Min(widthPx, heightPx) < LeastSidePx)
        {
            return PhotoProblems.TooFewPixels(where, widthPx, heightPx, LeastSidePx);
        }

        var exif = read();
        return new PhotoHeader(widthPx, heightPx, OrientationIn(exif), Focal35In(exif), CameraIn(exif), TakenAtIn(exif));
    }

    private static ExifProfile? Exif(byte[]? bytes)
    {
        var start = bytes.AsSpan().StartsWith("Exif\0\0"u8) ? 6 : 0;
        return bytes is null ? null : Guarded(() =>
        {
            var exif = new ExifProfile(bytes[start..]);
            return exif.Values.Count > 0 ? exif : null;
        });
    }

    /// <summary>The header parser is fed hostile bytes; whatever it trips over, there is nothing to be read.</summary>
    private static T? Guarded<T>(Func<T?> read)
        where T : class
    {
        try
        {
            return read();
        }
        catch (Exception e) when (e is ImageFormatException or InvalidOperationException or ArgumentException or OverflowException
            or IndexOutOfRangeException or NotSupportedException or IOException)
        {
            return null;
        }
    }

    private static int OrientationIn(ExifProfile? exif)
    {
        var value = exif?.GetValue(ExifTag.Orientation)?.Value ?? 1;
        return value is >= 1 and <= 8 ? value : 1;
    }

    private static double? Focal35In(ExifProfile? exif)
    {
        double? value = exif?.GetValue(ExifTag.FocalLengthIn35mmFilm)?.Value;
        return value is >= 8 and <= 1000 ? value : null;
    }

    private static string? CameraIn(ExifProfile? exif)
    {
        var name = $"{Printable(exif?.GetValue(ExifTag.Make)?.Value)} {Printable(exif?.GetValue(ExifTag.Model)?.Value)}".Trim();
        return name.Length == 0 ? null : name;
    }

    private static string? TakenAtIn(ExifProfile? exif) =>
        DateTime.TryParseExact(
            Printable(exif?.GetValue(ExifTag.DateTimeOriginal)?.Value), "yyyy:MM:dd HH:mm:ss",
            CultureInfo.InvariantCulture, DateTimeStyles.None, out var taken)
            ? taken.ToString("yyyy-MM-ddTHH:mm:ss", CultureInfo.InvariantCulture)
            : null;

    private static string Printable(string? text) =>
        new([.. (text ?? string.Empty).Where(c => !char.IsControl(c)).Take(80)]);
}
