using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Joints;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Joints;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Joints;
using SectionScan.Testing.Truth;

namespace SectionScan.Jobs.Tests.Joints;

/// <summary>The rendered flange p10, whose exact outlines and their places are known.</summary>
public sealed class MatchJointTests : IDisposable
{
    private const double ShiftMm = 0.05;
    private const double TurnDegrees = 0.1;

    private readonly ResultFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void An_outlet_of_the_flange_is_placed_where_the_truth_has_it(int outlet)
    {
        var truth = SamplePhotos.TruthOf("p10").Sections[outlet];

        // The true outline in its own frame as the manifold, the photo's opening on the card as the port: the placement is the truth's.
        var own = folder.PathOf("outlet.csv");
        using (var stream = File.Create(own))
        {
            OutlineCsv.Write(Outline.From(truth.Outline).ValueOrThrow(), stream);
        }

        var photo = new FaceInput("port", [SamplePhotos.PhotoPath("p10")], [], null, FaceView.WithFlow).Read(JointSide.Port, JointFlow.Intake, new()).ValueOrThrow().Face;
        var order = new JointOrder(
            photo with { Openings = [photo.Openings[outlet]] },
            new FaceInput("manifold", [own], [], null, FaceView.WithFlow).Read(JointSide.Manifold, JointFlow.Intake, new()).ValueOrThrow().Face,
            JointFlow.Intake, new());

        var placed = JointMatching.Match(order).ValueOrThrow().Placement.Transform;

        Assert.Equal(truth.Placement.Origin.XMm, placed.XMm, ShiftMm);
        Assert.Equal(-truth.Placement.Origin.YMm, placed.YMm, ShiftMm);
        Assert.Equal(truth.Placement.Up.Degrees, placed.Turn.Degrees, TurnDegrees);
    }

    [Fact]
    public void The_flange_is_laid_on_a_port_face_that_stands_elsewhere_as_the_truth_has_it()
    {
        // The port face: the flange's own true openings as its mate sees them, moved and turned by a known amount.
        var known = new SimilarityTransform(4.2, -2.9, Angle.FromDegrees(3.7), 1, false);
        var port = new JointFace("port", [.. SamplePhotos.TruthOf("p10").Sections.Select((truth, k) => new JointOpening(
            $"port {k + 1}",
            known.Apply(Outline.From(truth.PlacedOutline.Select(p => new SectionPoint(p.XMm, -p.YMm))).ValueOrThrow().Mirrored()), []))], [], true);
        var manifold = new FaceInput("manifold", [SamplePhotos.PhotoPath("p10")], [], null, FaceView.AsUsual)
            .Read(JointSide.Manifold, JointFlow.Intake, new()).ValueOrThrow().Face;

        var match = JointMatching.Match(new(port, manifold, JointFlow.Intake, new())).ValueOrThrow();

        // Judged at the flange's middle, where shift and turn do not mix.
        var middle = match.Placement.Middle;
        var own = Inverse(match.Placement.Transform, middle);
        Assert.InRange(known.Apply(own).DistanceTo(middle), 0, ShiftMm);
        Assert.Equal(known.Turn.Degrees, match.Placement.Transform.Turn.Degrees, TurnDegrees);
    }

    [Fact]
    public void Picture_template_and_steps_are_written_together()
    {
        var outlet = folder.PathOf("outlet.csv");
        using (var stream = File.Create(outlet))
        {
            OutlineCsv.Write(Outline.From(SamplePhotos.TruthOf("p10").Sections[0].Outline).ValueOrThrow().Scaled(0.97), stream);
        }

        // The manifold as a drawing: the same outline through DXF.
        var drawn = folder.PathOf("outlet.dxf");
        using (var stream = File.Create(drawn))
        {
            DxfWriter.Write([DxfPolyline.Of(Outline.From(SamplePhotos.TruthOf("p10").Sections[0].Outline).ValueOrThrow())], stream);
        }

        var job = new JointJob(
            new("port", [outlet], [], null, FaceView.WithFlow), new("manifold", [drawn], [], null, FaceView.WithFlow), null, JointFlow.Intake, new(), 0,
            new(), folder.PathOf("out"), PaperSize.A4, LengthUnit.Millimetre);

        var outcome = MatchJoint.Run(job).ValueOrThrow();

        Assert.Equal(8, outcome.Files.Count);
        Assert.All(outcome.Files, file => Assert.True(new FileInfo(file).Length > 1000));

        // The manifold's side is the port's in the mirror, so that both can be laid on their part; the manifold is 3 % the larger.
        var (port, manifold) = (JointTemplate.ToDxf(outcome.Match, JointSide.Port), JointTemplate.ToDxf(outcome.Match, JointSide.Manifold));
        Assert.Equal(port.Select(line => line.Layer), manifold.Select(line => line.Layer));
        Assert.All(port.Zip(manifold), each => Assert.Equal(each.First.Points.Select(p => -p.XMm), each.Second.Points.Select(p => p.XMm)));
        double WidthOf(string layer) => port.Single(line => line.Layer == layer).Points.Max(p => p.XMm) - port.Single(line => line.Layer == layer).Points.Min(p => p.XMm);
        Assert.Equal(0.97, WidthOf("port") / WidthOf("manifold"), 1e-3);
    }

    [Fact]
    public void Openings_whose_places_on_the_face_are_not_known_are_refused()
    {
        var outlet = folder.PathOf("outlet.csv");
        using (var stream = File.Create(outlet))
        {
            OutlineCsv.Write(Outline.From(SamplePhotos.TruthOf("p10").Sections[0].Outline).ValueOrThrow(), stream);
        }

        var read = new FaceInput("port", [outlet, outlet], [], null, FaceView.WithFlow).Read(JointSide.Port, JointFlow.Intake, new());

        Assert.False(read.TryGet(out _, out var problem));
        Assert.Equal("face-not-from-one-photo", problem.Code);
    }

    private static SectionPoint Inverse(SimilarityTransform transform, SectionPoint place)
    {
        var (sin, cos) = Math.SinCos(transform.Turn.Radians);
        var (x, y) = (place.XMm - transform.XMm, place.YMm - transform.YMm);
        return new((x * cos) + (y * sin), (y * cos) - (x * sin));
    }
}
