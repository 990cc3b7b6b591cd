using System.Diagnostics;

namespace SectionScan.Imaging.Tests.Photos;

/// <summary>Makes HEIC and AVIF files with Debian's encoder (libheif), an outside witness for what is read.</summary>
internal static class HeicFile
{
    /// <summary>Encodes a JPEG or PNG file with its EXIF; the ending of the name tells the format.</summary>
    public static string Encode(string picture, string path, int quality)
    {
        var start = new ProcessStartInfo("heif-enc") { RedirectStandardError = true, RedirectStandardOutput = true };
        foreach (var argument in new[] { "-q", quality.ToString(System.Globalization.CultureInfo.InvariantCulture), "-o", path, picture })
        {
            start.ArgumentList.Add(argument);
        }

        using var encoder = Process.Start(start)!;
        var errors = encoder.StandardError.ReadToEndAsync();
        encoder.StandardOutput.ReadToEnd();
        encoder.WaitForExit();
        Assert.True(encoder.ExitCode == 0, $"heif-enc (src/system-packages.sh --tests): {errors.Result}");
        return path;
    }
}
