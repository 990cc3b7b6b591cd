using OpenCvSharp;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;
using SectionScan.Testing.Rendering;

namespace SectionScan.Testing.Tests.Rendering;

public class LightOnSensorTests
{
    // The mean of many rows; a single row wanders by the paper's grain and the 64 samples of a pixel.
    private const double MeanTolerancePx = 0.01;
    private const double RowTolerancePx = 0.03;

    [Theory]
    [InlineData(0, 0)]
    [InlineData(15, 70)]
    [InlineData(20, 290)]
    public void Printed_edges_lie_where_the_camera_projects_them(double tilt, double azimuth)
    {
        var scene = TestScenes.Sheet(tilt, azimuth);
        using var light = LightOnSensor.Render(scene);

        // The right border of the square in column 0, row 4, and of the one in column 12, row 4.
        foreach (var x in new[] { 20.0, 240.0 })
        {
            TargetPoint[] edge = [.. Enumerable.Range(0, 60).Select(k => new TargetPoint(x, 82 + (k * 16 / 59.0)))];
            AssertEdge(light, scene.SensorCamera, edge, 0);
        }
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(12, 0)]
    [InlineData(20, 20)]
    public void The_far_edge_of_a_face_lies_where_the_camera_projects_it(double tilt, double azimuth)
    {
        var scene = TestScenes.Sheet(tilt, azimuth);
        using var light = LightOnSensor.Render(scene);
        var slice = scene.Slices[0];

        var right = slice.Outline.Where(p => p.XMm > 14).OrderBy(p => p.YMm).Select(slice.Placement.ToTarget);

        AssertEdge(light, scene.SensorCamera, [.. right], slice.ThicknessMm);
    }

    [Fact]
    public void A_wall_that_leans_out_shows_its_base_all_round()
    {
        var scene = TestScenes.Sheet(0, 0);
        scene = scene with { Slices = [scene.Slices[0] with { DraftTangent = 0.2, Placement = new(new(130, 90), default) }] };
        using var light = LightOnSensor.Render(scene);

        // Straight below the camera the base of a 0.2 draft stands out by 1.2 mm, the parallax hides 6 / 250 of 14 mm.
        var right = SceneGeometry.Placed(scene.Slices[0].Outline, scene.Slices[0].Placement)
            .Where(p => p.XMm > 144).Select(p => Outward(p, 1.2));

        AssertEdge(light, scene.SensorCamera, [.. right.OrderBy(p => p.YMm)], 0);
    }

    [Fact]
    public async Task The_same_scene_gives_the_same_bytes_on_one_thread()
    {
        var scene = TestScenes.Sheet().Resized(0.25) with { Develop = new(), Light = SceneLight.Hard };
        var many = PhotoRenderer.Render(scene).Jpeg;

        var scheduler = new ConcurrentExclusiveSchedulerPair(TaskScheduler.Default, 1).ExclusiveScheduler;
        var one = await Task.Factory.StartNew(
            () => PhotoRenderer.Render(scene).Jpeg, CancellationToken.None, TaskCreationOptions.None, scheduler);

        Assert.Equal(many, one);
    }

    private static TargetPoint Outward(TargetPoint p, double byMm)
    {
        // The normal of the ellipse (x/17)² + (y/14)² = 1 about (130, 90).
        var (nx, ny) = ((p.XMm - 130) / (17 * 17), (p.YMm - 90) / (14 * 14));
        var length = Math.Sqrt((nx * nx) + (ny * ny));
        return new(p.XMm + (byMm * nx / length), p.YMm + (byMm * ny / length));
    }

    private static void AssertEdge(Mat light, Camera camera, TargetPoint[] edge, double heightMm)
    {
        PixelPoint[] line = Array.ConvertAll(edge, p => camera.Project(p, heightMm));
        var errors = new List<double>();
        for (var row = (int)Math.Ceiling(line.Min(p => p.Y)) + 1; row < line.Max(p => p.Y) - 1; row++)
        {
            var next = Array.FindIndex(line, p => (line[0].Y < line[^1].Y) == (p.Y > row));
            var (a, b) = (line[next - 1], line[next]);
            var expected = a.X + ((b.X - a.X) * (row - a.Y) / (b.Y - a.Y));
            errors.Add(EdgeNear(light, row, expected) - expected);
        }

        Assert.True(errors.Count > 30, $"Only {errors.Count} rows cross the edge.");
        Assert.InRange(errors.Average(), -MeanTolerancePx, MeanTolerancePx);
        Assert.True(Math.Sqrt(errors.Average(e => e * e)) < RowTolerancePx, $"Rows differ by {Math.Sqrt(errors.Average(e => e * e))} px.");
    }

    // Where an ideal step would give the same sum of light; the levels are taken two pixels to either side.
    private static double EdgeNear(Mat light, int row, double expected)
    {
        var centre = (int)Math.Round(expected);
        double Level(int column) => light.At<Vec3f>(row, column).Item1;
        var (left, right) = (Level(centre - 2), Level(centre + 2));
        var share = 0.0;
        for (var column = centre - 1; column <= centre + 1; column++)
        {
            share += (Level(column) - right) / (left - right);
        }

        return centre - 1.5 + share;
    }
}
