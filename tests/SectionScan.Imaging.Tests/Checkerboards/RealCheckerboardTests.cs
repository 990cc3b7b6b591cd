using SectionScan.Imaging.Checkerboards;
using SectionScan.Imaging.Lenses;
using SectionScan.Imaging.Photos;
using SectionScan.Testing.Truth;
using Xunit.Abstractions;

namespace SectionScan.Imaging.Tests.Checkerboards;

/// <summary>Real photographs of a plain checkerboard that runs out of the frame.</summary>
public class RealCheckerboardTests(ITestOutputHelper output)
{
    private const double SquareMm = 166.0 / 11;

    [RealPhotosFact]
    public void A_lens_comes_out_of_photos_of_a_board_without_borders()
    {
        var paths = Enumerable.Range(0, 10).Select(i => Path.Combine(RealPhotos.Folder!, "calib", $"{i}.png")).ToArray();

        var made = LensProfiler.Make(paths, 1, 1, null, SquareMm).ValueOrThrow();

        // A careful computation outside this project, told beside the photographs: fx 2324, fy 2326, cx 526, cy 525, residual 0.62 to
        // 0.67 px, with fewer distortion terms.
        var (profile, lens) = (made.Profile, made.Profile.Lens);
        output.WriteLine($"{lens} rms {profile.RmsPx:0.000} px");
        Assert.Empty(made.LeftOut);
        Assert.Equal(2324, lens.FocalXPx, 3.0);
        Assert.Equal(2326, lens.FocalYPx, 3.0);
        Assert.Equal(526, lens.CentreXPx, 4.0);
        Assert.Equal(525, lens.CentreYPx, 4.0);
        Assert.Equal(-0.35, lens.K1, 0.03);
        Assert.InRange(profile.RmsPx, 0.55, 0.70);
    }

    [RealPhotosFact]
    public void Codes_in_some_squares_are_no_corners()
    {
        using var photo = Photo.Read(Path.Combine(RealPhotos.Folder!, "pose.png")).ValueOrThrow();

        var board = CheckerboardFinder.Find(photo.Grey, SquareMm, 0, "pose").ValueOrThrow();

        // A homography sees the bending of the lens as an error of a few pixels, a corner of a code or a skipped row as one of half a
        // square, some 35 px.
        using var flat = OpenCvSharp.Cv2.FindHomography(
            board.Points.Select(p => new OpenCvSharp.Point2d(p.Target.XMm, p.Target.YMm)),
            board.Points.Select(p => new OpenCvSharp.Point2d(p.Pixel.X, p.Pixel.Y)));
        var seen = OpenCvSharp.Cv2.PerspectiveTransform(board.Points.Select(p => new OpenCvSharp.Point2d(p.Target.XMm, p.Target.YMm)), flat);
        Assert.InRange(board.Points.Count, 125, 145);
        Assert.All(board.Points.Zip(seen), pair => Assert.InRange(pair.First.Pixel.DistanceTo(new(pair.Second.X, pair.Second.Y)), 0, 12));
    }
}
