using System.Buffers.Binary;
using OpenCvSharp;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;
using SectionScan.Testing.Rendering;
using SectionScan.Testing.Truth;

namespace SectionScan.Cli.Tests;

/// <summary>A folder of its own for one test, and photographs in it that cannot be used for one reason each.</summary>
internal sealed class PhotoFolder : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("sectionscan-").FullName;

    /// <summary>Where results go; not made yet.</summary>
    public string Out => PathOf("out");

    public string PathOf(string name) => Path.Combine(folder, name);

    /// <summary>What lies in <see cref="Out"/>, by name.</summary>
    public IReadOnlyList<string> Written =>
        Directory.Exists(Out) ? [.. Directory.GetFileSystemEntries(Out).Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal)] : [];

    public void Dispose() => Directory.Delete(folder, recursive: true);

    /// <summary>Makes the photo that a case is named for.</summary>
    public string Make(string name) => name switch
    {
        "no target" => Saved("grey.jpg", new Mat(1200, 1600, MatType.CV_8UC3, new Scalar(128, 128, 128))),
        "blurred beyond use" => Changed("p01", "blurred.jpg", photo => photo.GaussianBlur(new Size(0, 0), 10)),
        "no target for blur" => Changed("p01", "very-blurred.jpg", photo => photo.GaussianBlur(new Size(0, 0), 60)),
        "truncated" => Bytes("cut.jpg", File.ReadAllBytes(SamplePhotos.PhotoPath("p01"))[..400_000]),
        "header only" => Bytes("header.jpg", File.ReadAllBytes(SamplePhotos.PhotoPath("p01"))[..600]),
        "text" => Bytes("text.jpg", "This is a shopping list, not a photo.\n"u8.ToArray()),
        "empty" => Bytes("empty.jpg", []),
        "one pixel" => Saved("one.png", new Mat(1, 1, MatType.CV_8UC3, new Scalar(1, 2, 3))),
        "directory" => Directory.CreateDirectory(PathOf("folder.jpg")).FullName,
        "missing" => PathOf("nowhere.jpg"),
        "huge" => Bytes("huge.png", PngHeader(60_000, 60_000)),
        "no slices" => SamplePhotos.PhotoPath("c01"),
        "off the window" => SliceAt(212, 90),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "No such case."),
    };

    /// <summary>p01 without what lies right of its third slice and the middle of its fourth.</summary>
    public string CutThroughTheFourthSlice()
    {
        var truth = SamplePhotos.TruthOf("p01");
        var fourth = truth.Sections.Single(section => section.Station == 4);
        var middle = truth.Camera.Project(fourth.Placement.Origin, fourth.ThicknessMm);
        return Changed("p01", "cropped.jpg", photo => new Mat(photo, new Rect(0, 0, (int)middle.X, photo.Height)).Clone());
    }

    /// <summary>A sample photo at a share of its size.</summary>
    public string Resized(string photo, string name, double share) =>
        Changed(photo, name, full => full.Resize(default, share, share, InterpolationFlags.Area));

    /// <summary>A sample photo shrunken into the middle of a frame of the same size: the sheet as seen from far away.</summary>
    public string Distant(string photo, string name) => Changed(photo, name, full =>
    {
        using var small = full.Resize(default, 0.35, 0.35, InterpolationFlags.Area);
        var (x, y) = ((full.Width - small.Width) / 2, (full.Height - small.Height) / 2);
        return small.CopyMakeBorder(y, full.Height - small.Height - y, x, full.Width - small.Width - x, BorderTypes.Constant, new Scalar(90, 90, 90));
    });

    public string Bytes(string name, byte[] bytes)
    {
        File.WriteAllBytes(PathOf(name), bytes);
        return PathOf(name);
    }

    private string Changed(string photo, string name, Func<Mat, Mat> change)
    {
        using var full = Cv2.ImRead(SamplePhotos.PhotoPath(photo), ImreadModes.Color | ImreadModes.IgnoreOrientation);
        return Saved(name, change(full));
    }

    private string Saved(string name, Mat picture)
    {
        using (picture)
        {
            Assert.True(Cv2.ImWrite(PathOf(name), picture));
        }

        return PathOf(name);
    }

    /// <summary>A rendered photo of three megapixels: one elliptic slice, its middle at a place of the sheet.</summary>
    private string SliceAt(double xMm, double yMm)
    {
        SectionPoint[] ellipse =
        [
            .. Enumerable.Range(0, 360).Select(k => new SectionPoint(17 * Math.Cos(Math.Tau * k / 360), 14 * Math.Sin(Math.Tau * k / 360))),
        ];
        var camera = new Camera(new(1571, 1571, 1008, 756, 0, 0, 0, 0, 0), CameraPlacing.LookAt(130, 90, 260, 8, 20, 3));
        var scene = new PhotoScene(SceneTarget.Sheet, camera, 2016, 1512, 7)
        {
            Slices = [new(1, ellipse, new(new(xMm, yMm), default), 6, SliceMaterial.Blue)],
        };
        return PhotoRenderer.Render(scene).SaveTo(folder, "off.jpg");
    }

    /// <summary>Signature, IHDR and the start of an IDAT: what a decoder reads before it reserves memory (ISO/IEC 15948, 5.2, 11.2.2).</summary>
    private static byte[] PngHeader(uint width, uint height)
    {
        var file = new List<byte>([0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A]);
        var header = new byte[13];
        BinaryPrimitives.WriteUInt32BigEndian(header, width);
        BinaryPrimitives.WriteUInt32BigEndian(header.AsSpan(4), height);
        (header[8], header[9]) = (8, 2);
        file.AddRange(Chunk("IHDR", header));
        file.AddRange(Chunk("IDAT", [0x78, 0x9C, 0x03, 0x00, 0x00, 0x00, 0x00, 0x01]));
        file.AddRange(Chunk("IEND", []));
        return [.. file];
    }

    private static byte[] Chunk(string type, byte[] data)
    {
        var chunk = new byte[12 + data.Length];
        BinaryPrimitives.WriteInt32BigEndian(chunk, data.Length);
        System.Text.Encoding.ASCII.GetBytes(type, chunk.AsSpan(4));
        data.CopyTo(chunk, 8);
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(8 + data.Length), Crc32(chunk.AsSpan(4, 4 + data.Length)));
        return chunk;
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
