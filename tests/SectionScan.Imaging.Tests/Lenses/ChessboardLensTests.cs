using System.Globalization;
using SectionScan.Imaging.Targets;
using SectionScan.Metrology.Cameras;
using SectionScan.Testing.Repository;

namespace SectionScan.Imaging.Tests.Lenses;

/// <summary>The lens against results published for open data. chessboard-corners.csv holds the corners of a 9 × 6 chessboard of 25 mm
/// squares in the 13 photos left01 to left14 (640 × 480 px) of Debian's package opencv-doc 4.6.0, found with OpenCV's
/// findChessboardCorners and cornerSubPix, half-window 5 px. The published numbers are those of OpenCV's own regression test,
/// modules/python/test/test_calibration.py, for the same photos and window.</summary>
public class ChessboardLensTests
{
    private const double SquareMm = 25;

    // The published run stops at OpenCV's default of 30 steps or a change of 1e-16, and its corners come from another version's finder:
    // the standard uncertainty of f is 0.64 px (re-run with OpenCV 4.6).
    private const double FocalTolerancePx = 0.64;
    private const double CentreTolerancePx = 1;

    private static readonly LensCalibration Calibration = Calibrate();

    [Fact]
    public void The_reprojection_error_is_the_published_one() => Assert.Equal(0.196334638, Calibration.RmsPx, 0.002);

    [Fact]
    public void The_focal_lengths_are_the_published_ones()
    {
        Assert.Equal(532.81, Calibration.Lens.FocalXPx, FocalTolerancePx);
        Assert.Equal(532.93, Calibration.Lens.FocalYPx, FocalTolerancePx);
    }

    [Fact]
    public void The_principal_point_is_the_published_one()
    {
        Assert.Equal(342.50, Calibration.Lens.CentreXPx, CentreTolerancePx);
        Assert.Equal(233.89, Calibration.Lens.CentreYPx, CentreTolerancePx);
    }

    [Fact]
    public void The_distortion_is_the_published_one()
    {
        Assert.Equal(-0.2813, Calibration.Lens.K1, 0.01);
        Assert.Equal(0.00121, Calibration.Lens.P1, 0.0005);
        Assert.Equal(-0.00014, Calibration.Lens.P2, 0.0005);

        // k2 and k3 pull against each other; together, at the corner of the photo, they are well known.
        var published = new Lens(532.81, 532.93, 342.50, 233.89, -0.2813, 0.0291, 0.00121, -0.00014, 0.1549).Distort(0.5, 0.35);
        var ours = Calibration.Lens.Distort(0.5, 0.35);
        Assert.Equal(published.U, ours.U, 1.0);
        Assert.Equal(published.V, ours.V, 1.0);
    }

    [Fact]
    public void The_stated_uncertainty_of_the_focal_length_is_that_of_opencv()
    {
        // OpenCV 4.6 gives 0.64 px for this fit, with a variance of the corners that it takes over (corners - parameters) where there are
        // twice as many residuals (calibration.cpp, cited from memory).
        var (corners, parameters) = (13.0 * 54, 9 + (13 * 6));
        var opencv = 0.64 * Math.Sqrt((corners - parameters) / ((2 * corners) - parameters));

        Assert.Equal(opencv, Math.Sqrt(Calibration.Covariance[0][0]), 0.01);
    }

    private static LensCalibration Calibrate()
    {
        var prior = LensPrior.Unknown(640, 480, null);
        var file = RepositoryFolder.PathOf("tests", "SectionScan.Imaging.Tests", "Lenses", "chessboard-corners.csv");
        var views = File.ReadLines(file).Skip(1).Select(line => line.Split(',')).GroupBy(cells => cells[0]).Select(photo =>
        {
            SightedPoint[] points = [.. photo.Select(CornerOf)];
            return new LensView(photo.Key, points, CameraFinder.RoughPose(points, prior.Mean));
        });
        return LensCalibration.Solve([.. views], prior);
    }

    private static SightedPoint CornerOf(string[] cells)
    {
        double Number(int column) => double.Parse(cells[column], CultureInfo.InvariantCulture);
        return new(new(SquareMm * Number(1), SquareMm * Number(2)), new(Number(3), Number(4)));
    }
}
