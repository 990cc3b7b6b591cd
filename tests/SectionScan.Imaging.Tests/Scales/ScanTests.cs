using System.Buffers.Binary;
using OpenCvSharp;
using SectionScan.Imaging.Digitising;
using SectionScan.Imaging.Scales;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Imaging.Tests.Scales;

/// <summary>An ellipse on a flatbed scanner: outlines without any target.</summary>
public sealed class ScanTests : IDisposable
{
    private const double WideMm = 22;
    private const double HighMm = 15;
    private const double DotsPerMillimetre = 200 / 25.4;

    // Scanner's scale, 0.2 % in each direction, does not show in a perfect picture; a fiftieth of a pixel of 0.127 mm all round does.
    private const double AreaTolerance = 0.0005;

    private readonly string folder = Directory.CreateTempSubdirectory("sectionscan-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("png")]
    [InlineData("jpg")]
    [InlineData("tif")]
    public void The_resolution_in_the_file_is_the_scale(string kind)
    {
        var digitised = Digitise(Scan(kind, 200), new ScanScale()).ValueOrThrow();

        var section = Assert.Single(digitised.Sections);
        var measured = MeasuredOutline.Of(section.Outline, section.ErrorSources);
        var area = measured[MeasureCatalogue.Area].Estimate;
        Assert.Equal(Math.PI * WideMm * HighMm, area.Value, AreaTolerance * area.Value);
        Assert.Equal(2 * WideMm, measured[MeasureCatalogue.Width].Estimate.Value, 0.02);
        Assert.Equal(2 * HighMm, measured[MeasureCatalogue.Height].Estimate.Value, 0.02);

        // u of area from 0.2 % in each direction: √2·0.2 %; with the edge a little more.
        var scale = measured[MeasureCatalogue.Area].Budget.Rows[0];
        Assert.Equal(Math.Sqrt(2) * 0.002, scale.StandardUncertainty / area.Value, 1e-4);
        Assert.InRange(area.StandardUncertainty, scale.StandardUncertainty, 1.6 * scale.StandardUncertainty);
        Assert.Equal(("scan", "scan"), (digitised.Target.Kind, digitised.Camera.Source));
        Assert.DoesNotContain(digitised.Warnings, w => w.Contains("--thickness", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(72)]
    [InlineData(96)]
    [InlineData(0)]
    public void A_file_that_tells_no_scanners_resolution_is_refused_unless_it_is_told(int dots)
    {
        var scan = Scan("jpg", dots);

        Assert.False(Digitise(scan, new ScanScale()).TryGet(out _, out var problem));
        Assert.Equal("scan-without-resolution", problem.Code);
        var section = Assert.Single(Digitise(scan, new ScanScale(200)).ValueOrThrow().Sections);
        var area = MeasuredOutline.Of(section.Outline, section.ErrorSources)[MeasureCatalogue.Area].Estimate.Value;
        Assert.Equal(Math.PI * WideMm * HighMm, area, AreaTolerance * area);
    }

    private static Result<DigitisedPhoto> Digitise(string path, ScaleSource scale) =>
        Digitiser.Digitise(path, new DigitiseSettings { Scale = scale });

    private string Scan(string kind, int dots)
    {
        using var picture = FlatPicture.Draw(900, 700, (u, v) =>
        {
            var (x, y) = ((u - 450) / DotsPerMillimetre / WideMm, (v - 350) / DotsPerMillimetre / HighMm);
            return (x * x) + (y * y) < 1 ? 0.1 : 0.8;
        });
        var path = Path.Combine(folder, "scan." + kind);
        switch (kind)
        {
            case "tif":
                // Tag 296 ResolutionUnit: 2 is inch (TIFF 6.0, section 8).
                Assert.True(Cv2.ImWrite(
                    path, picture, new ImageEncodingParam(ImwriteFlags.TiffResUnit, 2), new ImageEncodingParam(ImwriteFlags.TiffXDpi, dots),
                    new ImageEncodingParam(ImwriteFlags.TiffYDpi, dots)));
                break;
            case "png":
                File.WriteAllBytes(path, WithPhysicalSize(picture.ImEncode(".png"), (uint)Math.Round(dots / 0.0254)));
                break;
            default:
                var bytes = picture.ImEncode(".jpg", new ImageEncodingParam(ImwriteFlags.JpegQuality, 97));

                // JFIF 1.02: density unit at byte 13 (1 is dots per inch, 0 only a ratio), then X and Y density.
                bytes[13] = dots == 0 ? (byte)0 : (byte)1;
                BinaryPrimitives.WriteUInt16BigEndian(bytes.AsSpan(14), (ushort)Math.Max(dots, 1));
                BinaryPrimitives.WriteUInt16BigEndian(bytes.AsSpan(16), (ushort)Math.Max(dots, 1));
                File.WriteAllBytes(path, bytes);
                break;
        }

        return path;
    }

    /// <summary>A pHYs chunk after the header (ISO/IEC 15948, 11.3.5.3): dots per metre across and down, unit 1.</summary>
    private static byte[] WithPhysicalSize(byte[] png, uint dotsPerMetre)
    {
        var chunk = new byte[21];
        BinaryPrimitives.WriteUInt32BigEndian(chunk, 9);
        "pHYs"u8.CopyTo(chunk.AsSpan(4));
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(8), dotsPerMetre);
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(12), dotsPerMetre);
        chunk[16] = 1;
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(17), Crc32(chunk.AsSpan(4, 13)));

        // Signature 8 bytes, IHDR 25.
        return [.. png[..33], .. chunk, .. png[33..]];
    }

    // ISO/IEC 15948, annex D: the CRC of ISO 3309, polynomial EDB88320 reflected.
    private static uint Crc32(ReadOnlySpan<byte> bytes)
    {
        var crc = uint.MaxValue;
        foreach (var value in bytes)
        {
            crc ^= value;
            for (var bit = 0; bit < 8; bit++)
            {
                crc = (crc & 1) == 1 ? 0xEDB88320 ^ (crc >> 1) : crc >> 1;
            }
        }

        return ~crc;
    }
}
