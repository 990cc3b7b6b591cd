using OpenCvSharp;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;
using SectionScan.Testing.Rendering;
using SectionScan.Testing.Truth;

namespace SectionScan.Testing.Tests.Rendering;

/// <summary>Our renderer against the sample photos, which another ray tracer made: from the same camera and polygons both must put every
/// edge at the same place.</summary>
public class SamplePhotoAgreementTests
{
    // Noise, the sharpening's radius and JPEG of both files stand between the two.
    private const double InkTolerancePx = 0.03;

    // The light beside a slice and inside an opening differs between the two renderers, and with it the slope on which the edge sits.
    private const double FaceTolerancePx = 0.06;

    [Theory]
    [InlineData("p01", 0.75, 0.35, 0.15)]
    [InlineData("p05", 0.75, 0.35, 0.15)]
    [InlineData("p08", 0.9, 0.5, 0.2)]
    public void Both_renderers_put_the_edges_at_the_same_place(string name, double blurPx, double sharpening, double sCurve)
    {
        var develop = new DevelopSettings { BlurSigmaPx = blurPx, Sharpening = sharpening, SCurve = sCurve };
        var scene = SceneOf(name) with { Develop = develop };

        // Through JPEG, whose coarse chroma moves the edges of coloured slices.
        using var ours = Cv2.ImDecode(PhotoRenderer.Render(scene).Jpeg, ImreadModes.Color | ImreadModes.IgnoreOrientation);
        using var theirs = Cv2.ImRead(SamplePhotos.PhotoPath(name), ImreadModes.Color | ImreadModes.IgnoreOrientation);

        var ink = Differences(ours, theirs, scene.SensorCamera, InkEdges(scene.Target), 0, EdgeBySum);
        var face = SamplePhotos.TruthOf(name).Sections
            .SelectMany(s => Differences(ours, theirs, scene.SensorCamera, FaceEdges(s, scene.SensorCamera), s.ThicknessMm, EdgeBySlope))
            .ToList();

        Assert.True(ink.Count > 100 && face.Count > 30, $"{ink.Count} and {face.Count} edges were compared.");
        Assert.InRange(Median(ink), -InkTolerancePx, InkTolerancePx);
        Assert.InRange(Median(face), -FaceTolerancePx, FaceTolerancePx);
    }

    private static PhotoScene SceneOf(string name)
    {
        var truth = SamplePhotos.TruthOf(name);
        var (camera, width, height) = PhotoTruth.ReadSensorCamera(SamplePhotos.TruthPath(name));
        return new(truth.Target, camera, width, height, 7)
        {
            Slices =
            [
                .. truth.Sections.Where(s => !s.IsOpening).Select(s =>
                    new SceneSlice(s.Station, s.Outline, s.Placement, s.ThicknessMm, SliceMaterial.Blue) { DraftTangent = s.WallDraftTangent }),
            ],
            Openings =
            [
                .. truth.Sections.Where(s => s.IsOpening).Select(s => new SceneOpening(s.Outline, s.Placement, 28, s.WallDraftTangent)),
            ],
        };
    }

    // Middles of the left and upper sides of the black squares that have a white one beside them, with the way into the white.
    private static IEnumerable<(TargetPoint At, double OutX, double OutY)> InkEdges(SceneTarget target)
    {
        var (columns, rows, side) = target == SceneTarget.Sheet ? (13, 9, 20.0) : (8, 5, 10.0);
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                var isBlank = target == SceneTarget.Sheet && column is >= 1 and <= 11 && row is >= 1 and <= 7;
                if ((row + column) % 2 == 1 || isBlank)
                {
                    continue;
                }

                for (var k = -3; k <= 3; k++)
                {
                    yield return (new(side * column, side * (row + 0.5 + (0.1 * k))), -1, 0);
                    yield return (new(side * (column + 0.5 + (0.1 * k)), side * row), 0, -1);
                }
            }
        }
    }

    // Where the wall is hidden: on a slice the edge away from the camera's foot point, on an opening the edge toward it.
    private static IEnumerable<(TargetPoint At, double OutX, double OutY)> FaceEdges(SectionTruth section, Camera camera)
    {
        var outline = section.PlacedOutline;
        for (var k = 0; k < outline.Length; k += 6)
        {
            var (a, b) = (outline[k], outline[(k + 3) % outline.Length]);

            // Counter-clockwise with y up is clockwise here: outward is the left of the way.
            var length = a.DistanceTo(b);
            var (outX, outY) = (-(b.YMm - a.YMm) / length, (b.XMm - a.XMm) / length);
            var away = ((a.XMm - camera.FootPoint.XMm) * outX) + ((a.YMm - camera.FootPoint.YMm) * outY);
            if (section.IsOpening ? away < -10 : away > 10)
            {
                yield return (a, outX, outY);
            }
        }
    }

    private static List<double> Differences(
        Mat ours,
        Mat theirs,
        Camera camera,
        IEnumerable<(TargetPoint At, double OutX, double OutY)> edges,
        double heightMm,
        Func<Func<double, double>, double> edgeOf)
    {
        var differences = new List<double>();
        foreach (var (at, outX, outY) in edges)
        {
            var from = camera.Project(at, heightMm);
            var to = camera.Project(new(at.XMm + (0.5 * outX), at.YMm + (0.5 * outY)), heightMm);
            var length = from.DistanceTo(to);
            var (dx, dy) = ((to.X - from.X) / length, (to.Y - from.Y) / length);
            Func<double, double> Along(Mat picture) => along => LinearGreen(picture, from.X + (along * dx), from.Y + (along * dy));
            if (from.X is > 10 and < 4020 && from.Y is > 10 and < 3010)
            {
                differences.Add(edgeOf(Along(ours)) - edgeOf(Along(theirs)));
            }
        }

        return differences;
    }

    // Where a step would give the same sum of light, px along the way from the expected place.
    private static double EdgeBySum(Func<double, double> level)
    {
        const int Reach = 3;
        const int PerPx = 4;
        var (inside, outside) = (level(-Reach - 0.5), level(Reach + 0.5));
        var sum = 0.0;
        for (var k = -Reach * PerPx; k < Reach * PerPx; k++)
        {
            sum += (level((k + 0.5) / PerPx) - outside) / (inside - outside) / PerPx;
        }

        return sum - Reach;
    }

    // The centre of the steep part; light that changes slowly beside the edge hardly moves it.
    private static double EdgeBySlope(Func<double, double> level)
    {
        var (weight, moment) = (0.0, 0.0);
        for (var along = -2.0; along <= 2; along += 0.1)
        {
            var slope = Math.Pow(level(along + 0.5) - level(along - 0.5), 2);
            weight += slope;
            moment += slope * along;
        }

        return moment / weight;
    }

    private static double LinearGreen(Mat picture, double x, double y)
    {
        var (ix, iy) = ((int)Math.Floor(x), (int)Math.Floor(y));
        var (fx, fy) = (x - ix, y - iy);
        double At(int column, int row) => Math.Pow(picture.At<Vec3b>(row, column).Item1 / 255.0, 2.2);
        return ((1 - fy) * (((1 - fx) * At(ix, iy)) + (fx * At(ix + 1, iy)))) + (fy * (((1 - fx) * At(ix, iy + 1)) + (fx * At(ix + 1, iy + 1))));
    }

    private static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted[sorted.Length / 2];
    }
}
