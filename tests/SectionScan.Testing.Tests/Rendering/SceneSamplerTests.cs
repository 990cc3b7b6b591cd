using NetTopologySuite.Geometries;
using SectionScan.Metrology.Outlines;
using SectionScan.Testing.Rendering;

namespace SectionScan.Testing.Tests.Rendering;

public class SceneSamplerTests
{
    private const int SeedsEach = 12;

    public static TheoryData<HardCase> Kinds => new(Enum.GetValues<HardCase>());

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_family_lays_sections_that_do_not_touch_one_another(HardCase kind)
    {
        foreach (var scene in Enumerable.Range(0, SeedsEach).Select(seed => SceneSampler.SceneFor(kind, seed)))
        {
            var truth = PhotoRenderer.TruthOf(scene);
            Polygon[] bodies =
            [
                .. truth.Sections.Select(s => ToPolygon([.. s.PlacedOutline.Select(p => new Coordinate(p.XMm, p.YMm))])),
                .. scene.Tags.Select(t => new Point(t.Centre.XMm, t.Centre.YMm).Buffer(6.5)).Cast<Polygon>(),
            ];

            Assert.NotEmpty(truth.Sections);
            for (var i = 0; i < bodies.Length; i++)
            {
                for (var j = 0; j < i; j++)
                {
                    Assert.True(bodies[i].Distance(bodies[j]) > 0.8, $"{scene.Name}: bodies {i} and {j} touch.");
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_slice_and_tag_is_seen_inside_the_window(HardCase kind)
    {
        foreach (var scene in Enumerable.Range(0, SeedsEach).Select(seed => SceneSampler.SceneFor(kind, seed)))
        {
            foreach (var slice in scene.Slices)
            {
                foreach (var p in SceneGeometry.Placed(slice.Outline, slice.Placement))
                {
                    // Where the face's edge is seen, mapped to the paper.
                    var onPaper = scene.SensorCamera.BackProject(scene.SensorCamera.Project(p, slice.ThicknessMm), 0);
                    Assert.InRange(onPaper.XMm, 40 * scene.PrintRatioX, 220 * scene.PrintRatioX);
                    Assert.InRange(onPaper.YMm, 40 * scene.PrintRatioY, 140 * scene.PrintRatioY);
                }
            }
        }
    }

    [Fact]
    public void The_same_number_gives_the_same_scene_and_another_number_another()
    {
        var (a, b, c) = (SceneSampler.Sample(5), SceneSampler.Sample(5), SceneSampler.Sample(6));

        Assert.Equal(a.SensorCamera.Pose, b.SensorCamera.Pose);
        Assert.Equal(a.Slices[0].Outline, b.Slices[0].Outline);
        Assert.NotEqual(a.SensorCamera.Pose, c.SensorCamera.Pose);
    }

    [Fact]
    public void Shapes_are_simple_centred_and_of_the_asked_size()
    {
        for (var seed = 0; seed < 200; seed++)
        {
            var shape = PortShapes.Draw(new(seed));

            var outline = Outline.From(shape).ValueOrThrow();
            var moments = PolygonMoments.Of(outline.Points);
            Assert.Equal(720, outline.Count);
            Assert.InRange(moments.Centroid.DistanceTo(default), 0, 1e-9);
            Assert.InRange(shape.Max(p => p.XMm) - shape.Min(p => p.XMm), 20, 46);
            Assert.InRange(shape.Max(p => p.YMm) - shape.Min(p => p.YMm), 20, 46);
        }
    }

    private static Polygon ToPolygon(Coordinate[] corners) => new(new LinearRing([.. corners, corners[0]]));
}
