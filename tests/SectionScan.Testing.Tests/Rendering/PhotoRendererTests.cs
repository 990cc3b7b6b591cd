using OpenCvSharp;
using OpenCvSharp.Aruco;
using SectionScan.Metrology.Frames;
using SectionScan.Testing.Rendering;
using SixLabors.ImageSharp.Metadata.Profiles.Exif;

namespace SectionScan.Testing.Tests.Rendering;

public class PhotoRendererTests
{
    [Fact]
    public void OpenCV_finds_the_corners_of_the_sheet_where_the_truth_has_them()
    {
        var scene = TestScenes.Sheet() with { Develop = new(), Light = SceneLight.Soft };
        var photo = PhotoRenderer.Render(scene);

        using var image = Cv2.ImDecode(photo.Jpeg, ImreadModes.Grayscale);
        using var dictionary = CvAruco.GetPredefinedDictionary(PredefinedDictionaryType.Dict5X5_100);
        using var board = new CharucoBoard(13, 9, 20, 15, dictionary);
        using var detector = new CharucoDetector(board);
        detector.DetectBoard(image, out var corners, out var ids, out _, out _);

        // 36 saddle points, and the 4 corners of the window that are none.
        Assert.Equal(40, ids.Length);
        var errors = corners.Zip(ids, (c, id) =>
        {
            var (column, row) = ((id % 12) + 1, (id / 12) + 1);

            // The detector counts from the corner of the first pixel, PixelPoint from its centre.
            var found = new PixelPoint(c.X - 0.5, c.Y - 0.5);
            return (IsSaddle: !(column is 2 or 11 && row is 2 or 7), Error: photo.Truth.Camera.Project(new(20 * column, 20 * row), 0).DistanceTo(found));
        }).Where(e => e.IsSaddle).Select(e => e.Error).ToList();
        Assert.Equal(36, errors.Count);
        Assert.True(errors.Average() < 0.15, $"Corners are off by {errors.Average()} px on average.");
    }

    [Fact]
    public void OpenCV_reads_the_station_tag_upright()
    {
        var photo = PhotoRenderer.Render(TestScenes.Sheet() with { Develop = new(), Light = SceneLight.Soft });

        using var image = Cv2.ImDecode(photo.Jpeg, ImreadModes.Grayscale);
        using var dictionary = CvAruco.GetPredefinedDictionary(PredefinedDictionaryType.DictAprilTag_36h11);
        using var detector = new ArucoDetector(dictionary);
        detector.DetectMarkers(image, out var quads, out var ids, out _);

        // The first corner is the printed top left.
        var quad = quads[Assert.Single(ids.Index(), i => i.Item == 1).Index];
        var topLeft = photo.Truth.Camera.Project(new(185, 103), 0);
        Assert.True(topLeft.DistanceTo(new(quad[0].X, quad[0].Y)) < 1.5);
    }

    [Fact]
    public void The_file_tells_camera_orientation_and_date()
    {
        var scene = TestScenes.Sheet().Resized(0.25) with { Orientation = 6, Label = new("Example", "Example phone", 27, "2025:06:14 10:30:00") };

        var photo = PhotoRenderer.Render(scene);

        var info = SixLabors.ImageSharp.Image.Identify(photo.Jpeg);
        var exif = info.Metadata.ExifProfile;
        Assert.Equal((ushort)6, exif.GetValue(ExifTag.Orientation).Value);
        Assert.Equal((ushort)27, exif.GetValue(ExifTag.FocalLengthIn35mmFilm).Value);
        Assert.Equal("Example", exif.GetValue(ExifTag.Make).Value);
        Assert.Equal("Example phone", exif.GetValue(ExifTag.Model).Value);
        Assert.Equal("2025:06:14 10:30:00", exif.GetValue(ExifTag.DateTimeOriginal).Value);
        Assert.Equal((photo.Truth.WidthPx, photo.Truth.HeightPx), (info.Height, info.Width));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(6)]
    [InlineData(8)]
    public void A_viewer_that_obeys_the_orientation_sees_the_tag_where_the_displayed_camera_has_it(int orientation)
    {
        var scene = TestScenes.Sheet() with { Orientation = orientation };
        var photo = PhotoRenderer.Render(scene);

        // OpenCV turns the pixels by the EXIF orientation itself.
        using var image = Cv2.ImDecode(photo.Jpeg, ImreadModes.Grayscale);
        using var dictionary = CvAruco.GetPredefinedDictionary(PredefinedDictionaryType.DictAprilTag_36h11);
        using var detector = new ArucoDetector(dictionary);
        detector.DetectMarkers(image, out var quads, out var ids, out _);

        var quad = quads[Assert.Single(ids.Index(), i => i.Item == 1).Index];
        Assert.True(photo.Truth.Camera.Project(new(185, 103), 0).DistanceTo(new(quad[0].X, quad[0].Y)) < 1.5);
    }
}
