using ImageMagick;
using OpenCvSharp;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Photos;

/// <summary>Reads what phones write and OpenCV does not read: HEIC and AVIF pictures, raw files (DNG). ImageMagick does it, told which format
/// to expect, with the pixels bounded before it decodes, no file swapped to disk, and an end to its time.</summary>
internal static class PhonePicture
{
    private const ulong MostBytes = 1_500_000_000;
    private const ulong LongestSidePx = 30_000;

    // A 48-megapixel HEIC takes some 10 s on one slow core.
    private static readonly TimeSpan LongestTime = TimeSpan.FromSeconds(120);

    // What the raw converter writes (ITU-R BT.709: linear below 0.018, else 1.099·L^0.45 − 0.099) as sRGB stores it.
    private static readonly byte[] FromBroadcast = [.. Enumerable.Range(0, 256).Select(Stored)];

    static PhonePicture()
    {
        ResourceLimits.Width = LongestSidePx;
        ResourceLimits.Height = LongestSidePx;
        ResourceLimits.Memory = MostBytes;
        ResourceLimits.MaxMemoryRequest = MostBytes;
        ResourceLimits.Disk = 0;
        ResourceLimits.Thread = (ulong)Environment.ProcessorCount;
    }

    /// <summary>Size as stored and EXIF, without decoding a pixel.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="isRaw">True for a digital negative, false for HEIC and AVIF.</param>
    /// <param name="where">The file, for messages.</param>
    public static Result<(int WidthPx, int HeightPx, byte[]? Exif)> Header(byte[] bytes, bool isRaw, string where) =>
        Guarded(isRaw, where, () =>
        {
            using var image = new MagickImage();
            image.Ping(bytes, Settings(bytes, isRaw));

            // A digital negative is itself laid out as EXIF is (TIFF 6.0).
            return ((int)image.Width, (int)image.Height, isRaw ? bytes : image.GetExifProfile()?.ToByteArray());
        });

    /// <summary>The pixels as stored, blue-green-red, gamma-coded as sRGB is. The caller disposes them.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="isRaw">True for a digital negative.</param>
    /// <param name="where">The file, for messages.</param>
    /// <param name="longest">When to give up; null: after two minutes.</param>
    public static Result<Mat> Decode(byte[] bytes, bool isRaw, string where, TimeSpan? longest = null)
    {
        // The decoder cannot be stopped from outside; one that takes too long is left to end by itself, within its bound of memory.
        var decoding = Task.Run(() => Guarded(isRaw, where, () => Pixels(bytes, isRaw)));
        if (decoding.Wait(longest ?? LongestTime))
        {
            return decoding.Result;
        }

        decoding.ContinueWith(late => late.Result.TryGet(out var mat, out _) ? mat : null, TaskScheduler.Default)
            .ContinueWith(late => late.Result?.Dispose(), TaskScheduler.Default);
        return Problem(isRaw, where, "decoding it takes too long");
    }

    private static Mat Pixels(byte[] bytes, bool isRaw)
    {
        using var image = new MagickImage(bytes, Settings(bytes, isRaw));
        using var pixels = image.GetPixels();
        var values = pixels.ToByteArray(PixelMapping.BGR) ?? throw new MagickMissingDelegateErrorException("no pixels");
        if (isRaw)
        {
            for (var i = 0; i < values.Length; i++)
            {
                values[i] = FromBroadcast[values[i]];
            }
        }

        using var seen = Mat.FromPixelData((int)image.Height, (int)image.Width, MatType.CV_8UC3, values);
        return seen.Clone();
    }

    private static MagickReadSettings Settings(byte[] bytes, bool isRaw)
    {
        var format = isRaw ? MagickFormat.Dng : ForeignFormat.IsAvif(bytes) ? MagickFormat.Avif : MagickFormat.Heic;
        var settings = new MagickReadSettings { Format = format, FrameIndex = 0, FrameCount = 1 };

        // As stored: the lens belongs to the sensor. Phones write the same turn into the file and into its EXIF.
        settings.SetDefine(MagickFormat.Heic, "preserve-orientation", true);

        // Brightening until some of the picture is white would cut the paper off.
        settings.SetDefine(MagickFormat.Dng, "no-auto-bright", true);
        return settings;
    }

    private static Result<T> Guarded<T>(bool isRaw, string where, Func<T> read)
        where T : notnull
    {
        try
        {
            return read();
        }
        catch (Exception e) when (e is MagickException or TypeInitializationException or DllNotFoundException or OverflowException or OutOfMemoryException)
        {
            // Hostile bytes, or a machine that the reader is not built for: either way the person can only give another file.
            var detail = e is MagickException ? "its content is damaged or of a kind that is not known" : "the reader for it is not built for this machine";
            return Problem(isRaw, where, detail);
        }
    }

    private static Problem Problem(bool isRaw, string where, string detail) =>
        isRaw ? PhotoProblems.IsDng(where, detail) : PhotoProblems.IsHeif(where, detail);

    private static byte Stored(int coded)
    {
        var v = coded / 255.0;
        var light = v < 0.081 ? v / 4.5 : Math.Pow((v + 0.099) / 1.099, 1 / 0.45);

        // IEC 61966-2-1 (cited from memory).
        return (byte)Math.Round(255 * (light <= 0.0031308 ? 12.92 * light : (1.055 * Math.Pow(light, 1 / 2.4)) - 0.055));
    }
}
