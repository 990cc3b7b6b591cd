using OpenCvSharp;
using SectionScan.Imaging.Photos;
using SectionScan.Testing.Truth;

namespace SectionScan.Imaging.Tests.Photos;

/// <summary>HEIC, AVIF and DNG files as phones write them.</summary>
public sealed class PhonePictureTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("sectionscan-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("photo.heic")]
    [InlineData("photo.avif")]
    public void A_picture_reads_as_it_was_encoded_with_its_camera_and_date(string name)
    {
        // p05 was taken with the phone held upright: EXIF orientation 6.
        var jpeg = Small("p05");
        using var source = Photo.Read(jpeg).ValueOrThrow();
        using var photo = Photo.Read(HeicFile.Encode(jpeg, PathOf(name), 95)).ValueOrThrow();

        // Encoded once more at quality 95: two levels of 255 on average.
        Assert.InRange(MeanDifference(source.Colour, photo.Colour), 0, 2);
        Assert.Equal(1, photo.QuarterTurns);
        Assert.Equal(source.Facts with { File = "", Sha256 = "" }, photo.Facts with { File = "", Sha256 = "" });
        Assert.NotNull(photo.Focal35Mm);
        Assert.Equal(source.Focal35Mm, photo.Focal35Mm);
        Assert.NotNull(photo.Facts.TakenAt);
    }

    [Theory]
    [InlineData("photo.heic", ".heic")]
    [InlineData("photo.avif", ".avif")]
    public void A_picture_is_told_by_its_first_bytes_with_its_size_as_displayed(string name, string extension)
    {
        var jpeg = PhotoView.Read(Small("p05")).ValueOrThrow();

        var view = PhotoView.Read(HeicFile.Encode(Small("p05"), PathOf(name), 60)).ValueOrThrow();

        Assert.Equal(jpeg with { Extension = extension }, view);
    }

    [Fact]
    public void A_raw_photo_is_no_plain_TIFF()
    {
        using var picture = new Mat(360, 480, MatType.CV_8UC3, new Scalar(120, 140, 160));
        var path = PathOf("photo.tif");
        File.WriteAllBytes(path, DngFile.Write(picture, 6));

        Assert.Equal(new PhotoView(360, 480, 1, ".dng"), PhotoView.Read(path).ValueOrThrow());
    }

    [Fact]
    public void A_raw_photo_is_developed_as_it_lay_on_the_sensor_with_its_EXIF()
    {
        using var full = Cv2.ImRead(SamplePhotos.PhotoPath("p01"), ImreadModes.Color | ImreadModes.IgnoreOrientation);
        using var picture = full.Resize(default, 0.2, 0.2, InterpolationFlags.Area);

        // Where nothing is white the converter brightens all alike, by one factor of light; with a white corner it does not.
        picture[new Rect(0, 0, 12, 12)].SetTo(new Scalar(255, 255, 255));
        var path = PathOf("photo.dng");
        File.WriteAllBytes(path, DngFile.Write(picture, 6));

        using var photo = Photo.Read(path).ValueOrThrow();

        Assert.Equal(picture.Size(), photo.Colour.Size());
        Assert.Equal(1, photo.QuarterTurns);
        Assert.Equal(("Example Raw phone", "2025-06-14T10:30:00", 26.0), (photo.Facts.Camera, photo.Facts.TakenAt, photo.Focal35Mm));

        // Mosaic and back blurs edges; levels on the whole stay, within what the converter's colours differ.
        using var smooth = picture.GaussianBlur(new Size(0, 0), 3);
        using var seen = photo.Colour.GaussianBlur(new Size(0, 0), 3);
        Assert.InRange(MeanDifference(smooth, seen), 0, 6);
    }

    [Fact]
    public void A_file_that_is_cut_off_is_refused_with_how_to_set_the_phone()
    {
        var heic = File.ReadAllBytes(HeicFile.Encode(Small("p05"), PathOf("whole.heic"), 80));
        foreach (var share in new[] { 0.02, 0.3, 0.9 })
        {
            var path = PathOf("cut.heic");
            File.WriteAllBytes(path, heic[..(int)(share * heic.Length)]);

            Assert.False(Photo.Read(path).TryGet(out _, out var problem));
            Assert.Equal("photo-is-heic", problem.Code);
            Assert.Contains("most compatible", problem.Remedy, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_file_that_tells_of_too_many_pixels_is_refused_before_they_are_decoded()
    {
        // The box "ispe" (ISO/IEC 23008-12, 6.5.3) tells width and height after its four bytes of version and flags.
        var heic = File.ReadAllBytes(HeicFile.Encode(Small("p05"), PathOf("whole.heic"), 80));
        for (var at = heic.AsSpan().IndexOf("ispe"u8); at >= 0;)
        {
            System.Buffers.Binary.BinaryPrimitives.WriteUInt32BigEndian(heic.AsSpan(at + 8), 20_000);
            System.Buffers.Binary.BinaryPrimitives.WriteUInt32BigEndian(heic.AsSpan(at + 12), 20_000);
            var next = heic.AsSpan(at + 4).IndexOf("ispe"u8);
            at = next < 0 ? -1 : at + 4 + next;
        }

        var path = PathOf("huge.heic");
        File.WriteAllBytes(path, heic);

        Assert.False(Photo.Read(path).TryGet(out _, out var problem));
        Assert.Equal("photo-too-many-pixels", problem.Code);
    }

    [Fact]
    public void Decoding_that_takes_too_long_is_given_up()
    {
        var heic = File.ReadAllBytes(HeicFile.Encode(Small("p05"), PathOf("slow.heic"), 80));

        Assert.False(PhonePicture.Decode(heic, isRaw: false, "slow.heic", TimeSpan.Zero).TryGet(out _, out var problem));

        Assert.Equal("photo-is-heic", problem.Code);
        Assert.Contains("too long", problem.What, StringComparison.Ordinal);
    }

    private string PathOf(string name) => Path.Combine(folder, name);

    /// <summary>The sample photo at a fifth of its size, with the header it had.</summary>
    private string Small(string name)
    {
        var truth = SamplePhotos.TruthOf(name);
        using var full = Cv2.ImRead(SamplePhotos.PhotoPath(name), ImreadModes.Color | ImreadModes.IgnoreOrientation);
        using var small = full.Resize(default, 0.2, 0.2, InterpolationFlags.Area);
        var label = new Testing.Rendering.PhotoLabel("Example", "Example phone", 26, "2025:06:14 10:30:00");
        var path = PathOf("small.jpg");
        File.WriteAllBytes(path, Testing.Rendering.ExifSegment.InsertedInto(
            small.ImEncode(".jpg", new ImageEncodingParam(ImwriteFlags.JpegQuality, 97)), label, truth.Orientation));
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
