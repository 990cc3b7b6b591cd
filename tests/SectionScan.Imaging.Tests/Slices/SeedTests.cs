using OpenCvSharp;
using SectionScan.Imaging.Digitising;
using SectionScan.Imaging.Photos;
using SectionScan.Imaging.Targets;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;
using SectionScan.Testing.Truth;

namespace SectionScan.Imaging.Tests.Slices;

/// <summary>A bent grey thing painted into the window of a photo of the bare sheet: grey and bent as a shadow is, so that it is missed
/// until a person points to it.</summary>
public sealed class SeedTests : IDisposable
{
    private const double RoundMm = 22;
    private const double HalfWidthMm = 7;
    private const double SweepDeg = 200;

    private readonly string path = Path.Combine(Path.GetTempPath(), $"sectionscan-seed-{Guid.NewGuid():N}.png");

    public void Dispose() => File.Delete(path);

    [Fact]
    public void What_was_missed_is_measured_where_a_person_points_to_it_and_nothing_is_made_up_beside_it()
    {
        var seed = Paint();
        Assert.False(Digitiser.Digitise(path, new() { ThicknessMm = 0 }).TryGet(out _, out var problem));
        Assert.Equal("no-slices", problem.Code);

        var digitised = Digitiser.Digitise(path, new() { ThicknessMm = 0, Seeds = [seed.On, seed.Beside] }).ValueOrThrow();

        var outline = Assert.Single(digitised.Sections).Outline;
        Assert.Equal("nothing-at-place", Assert.Single(digitised.Refused).Code);

        // A bent strip with round ends: width × length along its middle + a disc. Print, camera and edge within 1 %.
        var area = (2 * HalfWidthMm * RoundMm * double.DegreesToRadians(SweepDeg)) + (Math.PI * HalfWidthMm * HalfWidthMm);
        Assert.InRange(outline.ToPolygon().Area / area, 0.99, 1.01);
    }

    /// <summary>Where the thing lies, and where nothing does; px as displayed.</summary>
    private (PixelPoint On, PixelPoint Beside) Paint()
    {
        using var photo = Photo.Read(SamplePhotos.PhotoPath("c01")).ValueOrThrow();
        var sighting = TargetFinder.Find(photo.Grey, path).ValueOrThrow();
        var lens = LensPrior.FromExif(photo.Colour.Width, photo.Colour.Height, photo.Focal35Mm);
        var camera = CameraFinder.Find(sighting, lens, 1, 1, path).ValueOrThrow().Fit.Camera;

        // The middle of the window (columns 2 to 10, rows 2 to 6 of 20 mm).
        var middle = new TargetPoint(130, 90);
        Point On(double degrees, double radius)
        {
            var (sin, cos) = Math.SinCos(double.DegreesToRadians(degrees));
            var p = camera.Project(new(middle.XMm + (radius * cos), middle.YMm + (radius * sin)), 0);
            return new((int)Math.Round(p.X * 16), (int)Math.Round(p.Y * 16));
        }

        var ends = new List<Point>();
        for (var i = 0; i <= 100; i++)
        {
            ends.Add(On(SweepDeg * i / 100, RoundMm + HalfWidthMm));
        }

        ends.AddRange(End(SweepDeg, 1));
        for (var i = 100; i >= 0; i--)
        {
            ends.Add(On(SweepDeg * i / 100, RoundMm - HalfWidthMm));
        }

        ends.AddRange(End(0, -1));
        using var mask = new Mat(photo.Colour.Size(), MatType.CV_8UC1, new Scalar(0));
        Cv2.FillPoly(mask, [ends], new Scalar(255), LineTypes.AntiAlias, 4);
        using var soft = mask.GaussianBlur(new Size(0, 0), 0.7);
        using var grey = new Mat();
        photo.Colour.ConvertTo(grey, MatType.CV_8UC3, 0.62);
        using var painted = Mix(photo.Colour, grey, soft);
        Assert.True(Cv2.ImWrite(path, painted));
        var (at, beside) = (On(SweepDeg / 2, RoundMm), On(SweepDeg + 80, RoundMm));
        return (new(at.X / 16.0, at.Y / 16.0), new(beside.X / 16.0, beside.Y / 16.0));

        IEnumerable<Point> End(double degrees, int way)
        {
            for (var i = 1; i < 30; i++)
            {
                // Half a circle about the end of the middle line.
                var (sin, cos) = Math.SinCos(Math.PI * i / 30);
                var along = double.RadiansToDegrees(HalfWidthMm * sin / RoundMm) * way;
                yield return On(degrees + along, RoundMm + (way * HalfWidthMm * cos));
            }
        }
    }

    private static Mat Mix(Mat light, Mat dark, Mat share)
    {
        var mixed = light.Clone();
        var (l, d, s) = (mixed.GetUnsafeGenericIndexer<Vec3b>(), dark.GetUnsafeGenericIndexer<Vec3b>(), share.GetUnsafeGenericIndexer<byte>());
        var (rows, columns) = (light.Rows, light.Cols);
        for (var y = 0; y < rows; y++)
        {
            for (var x = 0; x < columns; x++)
            {
                if (s[y, x] is > 0 and var part)
                {
                    var (a, b) = (l[y, x], d[y, x]);
                    l[y, x] = new(Mixed(a.Item0, b.Item0, part), Mixed(a.Item1, b.Item1, part), Mixed(a.Item2, b.Item2, part));
                }
            }
        }

        return mixed;
    }

    private static byte Mixed(byte light, byte dark, byte part) => (byte)Math.Round(light + ((dark - light) * part / 255.0));
}
