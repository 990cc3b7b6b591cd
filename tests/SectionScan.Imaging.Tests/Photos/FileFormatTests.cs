using OpenCvSharp;
using SectionScan.Imaging.Photos;
using SectionScan.Testing.Truth;

namespace SectionScan.Imaging.Tests.Photos;

/// <summary>The same picture in every form that phones, scanners and programs save it in.</summary>
public sealed class FileFormatTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("sectionscan-").FullName;
    private readonly Mat picture;

    public FileFormatTests()
    {
        using var full = Cv2.ImRead(SamplePhotos.PhotoPath("p01"), ImreadModes.Color | ImreadModes.IgnoreOrientation);
        picture = full.Resize(default, 0.2, 0.2, InterpolationFlags.Area);
    }

    public void Dispose()
    {
        picture.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    [Theory]
    [InlineData("progressive.jpg", 1.5)]
    [InlineData("quality.webp", 2.5)]
    [InlineData("lossless.webp", 0)]
    [InlineData("plain.bmp", 0)]
    [InlineData("plain.tif", 0)]
    [InlineData("transparent.png", 0)]
    [InlineData("sixteen.png", 0.6)]
    [InlineData("sixteen.tif", 0.6)]
    [InlineData("cmyk.jpg", 3)]
    public void A_colour_picture_reads_as_it_was_saved(string name, double meanLevels)
    {
        using var photo = Photo.Read(Saved(name)).ValueOrThrow();

        Assert.InRange(MeanDifference(photo.Colour, picture), 0, meanLevels);
    }

    [Theory]
    [InlineData("grey.jpg", 1.5)]
    [InlineData("grey.png", 0)]
    [InlineData("grey.tif", 0)]
    [InlineData("sixteen-grey.png", 0.6)]
    [InlineData("sixteen-grey.tif", 0.6)]
    public void A_grey_picture_reads_with_three_equal_colours(string name, double meanLevels)
    {
        using var photo = Photo.Read(Saved(name)).ValueOrThrow();
        using var grey = picture.CvtColor(ColorConversionCodes.BGR2GRAY);

        Assert.InRange(MeanDifference(photo.Grey, grey), 0, meanLevels);
        using var red = photo.Colour.ExtractChannel(2);
        using var blue = photo.Colour.ExtractChannel(0);
        Assert.Equal(0, MeanDifference(red, blue));
    }

    [Theory]
    [InlineData("ftypheic", "photo-is-heic", "JPEG")]
    [InlineData("ftypheix", "photo-is-heic", "JPEG")]
    [InlineData("ftypmif1", "photo-is-heic", "JPEG")]
    [InlineData("ftypavif", "photo-is-heic", "JPEG")]
    [InlineData("ftypqt  ", "not-a-photo", "JPEG")]
    public void A_file_of_a_phone_that_cannot_be_read_says_how_to_set_the_phone(string box, string code, string word)
    {
        // ISO/IEC 14496-12, 4.3: size, "ftyp", major brand, minor version, compatible brands.
        var path = Bytes("phone.heic", [0, 0, 0, 24, .. System.Text.Encoding.ASCII.GetBytes(box), 0, 0, 0, 0, .. "mif1heic"u8, .. new byte[400]]);

        Assert.False(Photo.Read(path).TryGet(out _, out var problem));
        Assert.Equal(code, problem.Code);
        Assert.Contains(word, problem.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_digital_negative_without_a_picture_is_not_taken_for_its_preview(bool isLittle)
    {
        // A tag DNGVersion (50706, four bytes 1.4.0.0) in the first directory of a TIFF file; the pixels before it are whole.
        byte[] Short(int value) => isLittle ? [(byte)value, (byte)(value >> 8)] : [(byte)(value >> 8), (byte)value];
        byte[] Long(int value) => isLittle ? [.. Short(value), .. Short(value >> 16)] : [.. Short(value >> 16), .. Short(value)];
        byte[] Entry(int tag, int type, int count, byte[] value) => [.. Short(tag), .. Short(type), .. Long(count), .. value];
        byte[] file =
        [
            .. isLittle ? "II*\0"u8 : "MM\0*"u8, .. Long(8), .. Short(2),
            .. Entry(256, 4, 1, Long(4000)), .. Entry(50706, 1, 4, [1, 4, 0, 0]), .. Long(0), .. new byte[200],
        ];

        Assert.False(Photo.Read(Bytes("raw.dng", file)).TryGet(out _, out var problem));
        Assert.Equal("photo-is-raw", problem.Code);
        Assert.Contains("JPEG", problem.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void A_cut_directory_of_a_tiff_file_harms_nothing()
    {
        foreach (var length in Enumerable.Range(0, 40))
        {
            byte[] file = [.. "II*\0"u8, 8, 0, 0, 0, 255, 255, .. new byte[40]];

            Assert.False(Photo.Read(Bytes("cut.dng", file[..length])).IsSuccess);
        }
    }

    private string Saved(string name)
    {
        var path = Path.Combine(folder, name);
        using var grey = picture.CvtColor(ColorConversionCodes.BGR2GRAY);
        using var deep = new Mat();
        (name.Contains("grey", StringComparison.Ordinal) ? grey : picture).ConvertTo(deep, MatType.CV_16U, 257);
        using var clear = picture.CvtColor(ColorConversionCodes.BGR2BGRA);
        byte[] bytes = name switch
        {
            "progressive.jpg" => picture.ImEncode(".jpg", new ImageEncodingParam(ImwriteFlags.JpegProgressive, 1), new(ImwriteFlags.JpegQuality, 97)),
            "quality.webp" => picture.ImEncode(".webp", new ImageEncodingParam(ImwriteFlags.WebPQuality, 95)),
            "lossless.webp" => picture.ImEncode(".webp", new ImageEncodingParam(ImwriteFlags.WebPQuality, 101)),
            "plain.bmp" => picture.ImEncode(".bmp"),
            "plain.tif" => picture.ImEncode(".tif"),
            "transparent.png" => clear.ImEncode(".png"),
            "sixteen.png" or "sixteen-grey.png" => deep.ImEncode(".png"),
            "sixteen.tif" or "sixteen-grey.tif" => deep.ImEncode(".tif"),
            "grey.jpg" => grey.ImEncode(".jpg", new ImageEncodingParam(ImwriteFlags.JpegQuality, 97)),
            "grey.png" => grey.ImEncode(".png"),
            "grey.tif" => grey.ImEncode(".tif"),
            "cmyk.jpg" => CmykJpeg.Encode(picture),
            _ => throw new ArgumentOutOfRangeException(nameof(name), name, "No such case."),
        };
        File.WriteAllBytes(path, bytes);
        return path;
    }

    private string Bytes(string name, byte[] bytes)
    {
        var path = Path.Combine(folder, name);
        File.WriteAllBytes(path, bytes);
        return path;
    }

    private static double MeanDifference(Mat a, Mat b)
    {
        Assert.Equal((b.Size(), b.Type()), (a.Size(), a.Type()));
        using var difference = new Mat();
        Cv2.Absdiff(a, b, difference);
        var mean = Cv2.Mean(difference);
        return Math.Max(mean.Val0, Math.Max(mean.Val1, mean.Val2));
    }
}
