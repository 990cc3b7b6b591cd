using OpenCvSharp;
using SectionScan.Imaging.Digitising;
using SectionScan.Imaging.Scales;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Imaging.Tests.Scales;

/// <summary>Discs of known size by every other source of scale. The area of a disc is π·r².</summary>
public sealed class OtherScalesTests : IDisposable
{
    private const double RadiusMm = 16;
    private const double DiscMm2 = Math.PI * RadiusMm * RadiusMm;

    // A pixel covers 0.2 mm here; a twentieth of one all round.
    private const double AreaTolerance = 2 * 0.01 / RadiusMm;

    private readonly string folder = Directory.CreateTempSubdirectory("sectionscan-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void A_board_that_runs_out_of_the_frame_and_is_partly_covered_measures_what_lies_beside_it()
    {
        var photo = Saved("board.png", FlatPicture.CameraOver(60, 60, 380, 14, 30), (x, y) =>
            FlatPicture.Disc(x, y, 175, 45, RadiusMm) ? 0.1
            : FlatPicture.Disc(x, y, 70, 70, 22) ? 0.25 : FlatPicture.Board(x + 120, y + 60, 15, 17, 14));

        var digitised = Digitised(photo, new CheckerboardScale(15));

        Assert.Equal("checkerboard", digitised.Target.Kind);
        Assert.True(digitised.Target.CornersFound < digitised.Target.CornersExpected);
        Assert.Equal(14, digitised.Camera.TiltDeg, 0.5);
        var area = Area(Assert.Single(digitised.Sections));
        Assert.Equal(DiscMm2, area.Value, Math.Max(AreaTolerance * DiscMm2, area.ExpandedUncertainty));
    }

    [Fact]
    public void The_pose_can_come_from_another_photo_of_the_unmoved_camera()
    {
        var camera = FlatPicture.CameraOver(60, 60, 380, 14, 30);
        var pose = Saved("pose.png", camera, (x, y) => FlatPicture.Board(x + 120, y + 60, 15, 20, 16));
        var photo = Saved("things.png", camera, (x, y) => FlatPicture.Disc(x, y, 60, 60, RadiusMm) ? 0.1 : 0.75);

        var digitised = Digitised(photo, new CheckerboardScale(15, pose));

        var area = Area(Assert.Single(digitised.Sections));
        Assert.Equal(DiscMm2, area.Value, AreaTolerance * DiscMm2);
        Assert.Contains(digitised.Sections[0].ErrorSources, s => s.Name == "board taken away");
        Assert.Contains(digitised.Warnings, w => w.Contains("pose.png", StringComparison.Ordinal));
    }

    [Fact]
    public void A_pose_photo_of_another_size_is_refused()
    {
        var camera = FlatPicture.CameraOver(60, 60, 380, 14, 30);
        var photo = Saved("things.png", camera, (x, y) => FlatPicture.Disc(x, y, 60, 60, RadiusMm) ? 0.1 : 0.75);
        var pose = Path.Combine(folder, "pose.png");
        using (var board = FlatPicture.Draw(camera, (x, y) => FlatPicture.Board(x + 120, y + 60, 15, 20, 16)))
        using (var half = board.Resize(default, 0.5, 0.5, InterpolationFlags.Area))
        {
            Assert.True(Cv2.ImWrite(pose, half));
        }

        Assert.Equal("pose-photo-differs", ProblemOf(photo, new CheckerboardScale(15, pose)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(4)]
    public void Two_points_measure_with_a_wide_uncertainty_that_holds_the_truth(double tiltDegrees)
    {
        var camera = FlatPicture.CameraOver(60, 60, 380, tiltDegrees, 30);
        var photo = Saved("points.png", camera, (x, y) => FlatPicture.Disc(x, y, 65, 55, RadiusMm) ? 0.1 : 0.75);
        var (a, b) = (camera.Project(new(0, 70), 0), camera.Project(new(120, 50), 0));

        var digitised = Digitised(photo, new PointsScale(a, b, Math.Sqrt((120 * 120) + (20 * 20))));

        var area = Area(Assert.Single(digitised.Sections));
        Assert.InRange(Math.Abs(area.Value - DiscMm2), 0, area.ExpandedUncertainty);

        // A tilt of 5 degrees alone shortens one direction by 1 - cos 5° = 0.38 %.
        Assert.True(area.StandardUncertainty > 0.0038 * DiscMm2);
        Assert.Contains(digitised.Warnings, w => w.Contains("square on", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(18)]
    public void Four_corners_of_a_rectangle_take_the_tilt_out(double tiltDegrees)
    {
        var camera = FlatPicture.CameraOver(60, 60, 380, tiltDegrees, 30);
        var photo = Saved("rectangle.png", camera, (x, y) => FlatPicture.Disc(x, y, 65, 55, RadiusMm) ? 0.1 : 0.75);
        var corners = Corners(camera);

        var digitised = Digitised(photo, new RectangleScale(corners, 150, 100));

        var area = Area(Assert.Single(digitised.Sections));
        Assert.InRange(Math.Abs(area.Value - DiscMm2), 0, area.ExpandedUncertainty);

        // Nothing is known of this file's lens: it may bend lines by some percent, and four corners cannot tell.
        Assert.InRange(area.ExpandedUncertainty, 0.002 * DiscMm2, 0.10 * DiscMm2);
    }

    [Fact]
    public void A_rectangle_whose_corners_or_size_are_wrong_is_refused()
    {
        var camera = FlatPicture.CameraOver(60, 60, 380, 5, 30);
        var photo = Saved("rectangle.png", camera, (x, y) => FlatPicture.Disc(x, y, 65, 55, RadiusMm) ? 0.1 : 0.75);
        var c = Corners(camera);

        Assert.Equal("rectangle-not-convex", ProblemOf(photo, new RectangleScale([c[0], c[2], c[1], c[3]], 150, 100)));
        Assert.Contains(
            ProblemOf(photo, new RectangleScale(c, 60, 250)), new[] { "rectangle-does-not-fit", "tilt-too-steep" });
        Assert.Equal("scale-point-outside", ProblemOf(photo, new RectangleScale([new(-5, 3), c[1], c[2], c[3]], 150, 100)));
        Assert.Equal("scale-too-short", ProblemOf(photo, new PointsScale(new(100, 100), new(120, 100), 10)));
        Assert.Equal("scale-point-outside", ProblemOf(photo, new PointsScale(new(100, 100), new(5000, 100), 10)));
    }

    [Fact]
    public void A_plain_ground_with_nothing_on_it_says_so()
    {
        var photo = Saved("bare.png", FlatPicture.CameraOver(60, 60, 380, 5, 30), (_, _) => 0.75);

        Assert.Equal("no-objects", ProblemOf(photo, new PointsScale(new(100, 100), new(900, 100), 150)));
    }

    private static PixelPoint[] Corners(Camera camera) =>
        [camera.Project(new(-10, 10), 0), camera.Project(new(140, 10), 0), camera.Project(new(140, 110), 0), camera.Project(new(-10, 110), 0)];

    private static Estimate Area(DigitisedSection section) =>
        MeasuredOutline.Of(section.Outline, section.ErrorSources)[MeasureCatalogue.Area].Estimate;

    private static DigitisedPhoto Digitised(string photo, ScaleSource scale) =>
        Digitiser.Digitise(photo, new DigitiseSettings { Scale = scale, ThicknessMm = 0 }).ValueOrThrow();

    private static string ProblemOf(string photo, ScaleSource scale)
    {
        Assert.False(Digitiser.Digitise(photo, new DigitiseSettings { Scale = scale, ThicknessMm = 0 }).TryGet(out _, out var problem));
        Assert.NotEmpty(problem.Remedy);
        return problem.Code;
    }

    private string Saved(string name, Camera camera, Func<double, double, double> reflectance)
    {
        using var picture = FlatPicture.Draw(camera, reflectance);
        var path = Path.Combine(folder, name);
        Assert.True(Cv2.ImWrite(path, picture));
        return path;
    }
}
