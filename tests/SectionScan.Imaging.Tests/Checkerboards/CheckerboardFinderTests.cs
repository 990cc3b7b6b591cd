using OpenCvSharp;
using SectionScan.Imaging.Checkerboards;
using SectionScan.Imaging.Photos;
using SectionScan.Imaging.Targets;
using SectionScan.Imaging.Tests.Scales;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Tests.Checkerboards;

public class CheckerboardFinderTests
{
    private const double SquareMm = 15;

    // Edges of the drawn picture stand at thirds of a pixel; a wrong corner would be off by half a square, some 35 px.
    private const double CornerTolerancePx = 0.3;

    private static readonly Camera Over = FlatPicture.CameraOver(60, 60, 380, 14, 30);

    [Fact]
    public void Corners_are_found_where_the_camera_sees_them()
    {
        var board = Find((x, y) => FlatPicture.Board(x + 120, y + 60, SquareMm, 20, 16)).ValueOrThrow();

        var shift = ShiftOf(board);
        Assert.True(board.Points.Count > 150);
        Assert.All(board.Points, p => Assert.InRange(Over.Project(Shifted(p.Target, shift), 0).DistanceTo(p.Pixel), 0, CornerTolerancePx));
    }

    [Fact]
    public void A_thing_that_covers_the_middle_leaves_the_rest_in_one_lattice()
    {
        var board = Find((x, y) => FlatPicture.Disc(x, y, 60, 60, 38) ? 0.3 : FlatPicture.Board(x + 120, y + 60, SquareMm, 20, 16)).ValueOrThrow();

        var shift = ShiftOf(board);
        Assert.All(board.Points, p => Assert.InRange(Over.Project(Shifted(p.Target, shift), 0).DistanceTo(p.Pixel), 0, CornerTolerancePx));
        foreach (var side in new[] { -1, 1 })
        {
            Assert.Contains(board.Points, p => side * (Shifted(p.Target, shift).XMm - 60) > 45);
            Assert.Contains(board.Points, p => side * (Shifted(p.Target, shift).YMm - 60) > 45);
        }
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(1.0)]
    public void A_board_pieced_together_wrongly_is_not_believed(double squaresOff)
    {
        // The right half lies lower by half a square, or by a whole one so that colours clash.
        var found = Find((x, y) => FlatPicture.Board(x + 120, y + 60 + (x > 60 ? squaresOff * SquareMm : 0), SquareMm, 20, 18));

        if (!found.TryGet(out var board, out var problem))
        {
            Assert.Contains(problem.Code, new[] { "no-checkerboard", "checkerboard-contradicts-itself" });
            return;
        }

        // Then it is one of the halves alone, and that is a true lattice.
        var prior = LensPrior.FromExif(1600, 1200, 1900 * 43.26661531 / 2000);
        var fit = CameraFinder.Find(board.Points, "checkerboard", prior, "pieced").ValueOrThrow().Fit;
        Assert.InRange(fit.RmsPx, 0, 0.15);
        Assert.Equal(Over.HeightMm, fit.Camera.HeightMm, 0.03 * Over.HeightMm);
    }

    [Theory]
    [InlineData("bricks")]
    [InlineData("dots")]
    [InlineData("stripes")]
    [InlineData("noise")]
    public void Other_patterns_are_no_board(string pattern)
    {
        var random = new Random(7);
        var noise = Enumerable.Range(0, 4096).Select(_ => random.NextDouble()).ToArray();
        Func<double, double, double> reflectance = pattern switch
        {
            // Rows of squares, each shifted by half a square against the next: corners are T's.
            "bricks" => (x, y) => ((int)Math.Floor((x / SquareMm) + (0.5 * Math.Floor(y / SquareMm))) & 1) == 0 ? 0.05 : 0.75,
            "dots" => (x, y) => FlatPicture.Disc(x - (SquareMm * Math.Round(x / SquareMm)), y - (SquareMm * Math.Round(y / SquareMm)), 0, 0, 4) ? 0.05 : 0.75,
            "stripes" => (x, _) => ((int)Math.Floor(x / SquareMm) & 1) == 0 ? 0.05 : 0.75,
            _ => (x, y) => noise[(((int)Math.Floor(x / 4) & 63) * 64) + ((int)Math.Floor(y / 4) & 63)],
        };

        Assert.False(Find(reflectance).TryGet(out _, out var problem));
        Assert.Contains(problem.Code, new[] { "no-checkerboard", "checkerboard-contradicts-itself" });
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Axes_follow_the_photo_as_displayed(int quarterTurns)
    {
        using var picture = FlatPicture.Draw(Over, (x, y) => FlatPicture.Board(x + 120, y + 60, SquareMm, 20, 16));
        using var stored = new Mat();

        // Turned back by as many quarters as the display turns forward.
        Cv2.Rotate(picture, stored, quarterTurns switch
        {
            1 => RotateFlags.Rotate90Counterclockwise,
            2 => RotateFlags.Rotate180,
            _ => RotateFlags.Rotate90Clockwise,
        });
        using var grey = stored.CvtColor(ColorConversionCodes.BGR2GRAY);

        var board = CheckerboardFinder.Find(grey, SquareMm, quarterTurns, "turned").ValueOrThrow();

        var (width, height) = (grey.Width, grey.Height);
        PixelPoint Shown(SightedPoint p) => StoredPixels.ToDisplayed(p.Pixel, quarterTurns, width, height);
        var first = board.Points.First(p => board.Points.Any(q => IsNext(p, q, 1, 0)) && board.Points.Any(q => IsNext(p, q, 0, 1)));
        var (right, down) = (board.Points.First(q => IsNext(first, q, 1, 0)), board.Points.First(q => IsNext(first, q, 0, 1)));
        Assert.True(Shown(right).X - Shown(first).X > Math.Abs(Shown(right).Y - Shown(first).Y));
        Assert.True(Shown(down).Y - Shown(first).Y > Math.Abs(Shown(down).X - Shown(first).X));
    }

    private static bool IsNext(SightedPoint p, SightedPoint q, int columns, int rows) =>
        q.Target.DistanceTo(new(p.Target.XMm + (columns * SquareMm), p.Target.YMm + (rows * SquareMm))) < 0.01;

    private static Metrology.Results.Result<CheckerboardSighting> Find(Func<double, double, double> reflectance)
    {
        using var picture = FlatPicture.Draw(Over, reflectance);
        using var grey = picture.CvtColor(ColorConversionCodes.BGR2GRAY);
        return CheckerboardFinder.Find(grey, SquareMm, 0, "drawn");
    }

    /// <summary>The lattice counts from any corner: how its origin lies to the drawn board's.</summary>
    private static TargetPoint ShiftOf(CheckerboardSighting board)
    {
        var first = board.Points[0];
        var true1 = Over.BackProject(first.Pixel, 0);
        return new(Snapped(true1.XMm - first.Target.XMm), Snapped(true1.YMm - first.Target.YMm));

        static double Snapped(double mm) => SquareMm * Math.Round(mm / SquareMm);
    }

    private static TargetPoint Shifted(TargetPoint place, TargetPoint by) => new(place.XMm + by.XMm, place.YMm + by.YMm);
}
