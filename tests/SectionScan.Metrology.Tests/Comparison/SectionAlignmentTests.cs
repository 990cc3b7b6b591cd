using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.Comparison;

public class SectionAlignmentTests
{
    /// <summary>No symmetry but that of upside down.</summary>
    private static readonly Outline Port = AnalyticShapes.Stadium(14, 12).Mapped(p => new(
        p.XMm * (1 + (0.01 * p.YMm)), p.YMm * (1 + (0.004 * p.XMm))));

    private static readonly SectionMarks Marks = new(
        new(new(2, -5), new(3, 12)), new(new(-10, -13), new(10, -12.5)),
        new Dictionary<string, SectionPoint> { ["parting line"] = new(-19, 1), ["boss"] = new(2.5, 13) });

    [Theory]
    [InlineData(SectionAlignmentMethod.GuideAxis)]
    [InlineData(SectionAlignmentMethod.FloorLine)]
    [InlineData(SectionAlignmentMethod.Points)]
    public void A_section_that_was_moved_and_turned_is_brought_back_by_its_marks(SectionAlignmentMethod method)
    {
        var motion = new SimilarityTransform(1.5, -2.5, Angle.FromDegrees(8), 1, false);

        var laid = SectionAlignment.Align((Port, Marks), (motion.Apply(Port), Marks.Mapped(motion.Apply)), new(method, new(AlignmentFreedom.None))).ValueOrThrow();

        Assert.Equal(-8, laid.Transform.Turn.Degrees, 1e-6);
        Assert.InRange(HausdorffDistance.Between(Port, laid.Outline), 0, 1e-3);
    }

    [Fact]
    public void A_move_by_hand_comes_after_the_alignment_and_turns_about_the_section_s_own_centroid()
    {
        var away = Port.Moved(30, -20);
        var choice = AlignmentChoice.AsPlaced with { Method = SectionAlignmentMethod.Centroids, ByHand = new(0.4, -0.2, 90) };

        var laid = SectionAlignment.Align((Port, SectionMarks.None), (away, SectionMarks.None), choice).ValueOrThrow();

        // A quarter turn about c takes p to c + (−(p − c).y, (p − c).x); then the shift.
        var (c, p) = (PolygonMoments.Of(Port.Points).Centroid, Port.Points[7]);
        Assert.Equal(c.XMm - (p.YMm - c.YMm) + 0.4, laid.Outline.Points[7].XMm, 1e-9);
        Assert.Equal(c.YMm + (p.XMm - c.XMm) - 0.2, laid.Outline.Points[7].YMm, 1e-9);
        Assert.Equal(laid.Outline.Points[7].XMm, laid.Transform.Apply(away.Points[7]).XMm, 1e-9);
        Assert.Equal(laid.Outline.Points[7].YMm, laid.Transform.Apply(away.Points[7]).YMm, 1e-9);
    }

    [Theory]
    [InlineData(SectionAlignmentMethod.GuideAxis)]
    [InlineData(SectionAlignmentMethod.FloorLine)]
    [InlineData(SectionAlignmentMethod.Points)]
    public void A_left_port_is_laid_on_a_right_one_when_mirrored(SectionAlignmentMethod method)
    {
        var left = Port.Mirrored().Turned(Angle.FromDegrees(-6)).Moved(0.7, 1.1);
        var mirror = SimilarityTransform.Identity with { IsMirrored = true };
        var leftMarks = Marks.Mapped(mirror.Apply).Mapped(new SimilarityTransform(0.7, 1.1, Angle.FromDegrees(-6), 1, false).Apply);

        var laid = SectionAlignment.Align((Port, Marks), (left, leftMarks), new(method, new(AlignmentFreedom.None), IsMirrored: true)).ValueOrThrow();

        Assert.True(laid.Transform.IsMirrored);
        Assert.InRange(HausdorffDistance.Between(Port, laid.Outline), 0, 1e-3);
    }

    [Fact]
    public void Mirrored_about_its_guide_axis_a_side_is_the_reference_for_the_other()
    {
        // Alike on both sides of a leaning axis, then the right wall is cut by up to 0.5 mm.
        var axis = new SectionLine(new(1, -10), new(2, 15));
        var lean = Angle.FromRadians(axis.DirectionRadians - (Math.PI / 2));
        var even = AnalyticShapes.Ellipse(15, 18).Turned(lean).Moved(axis.Middle.XMm, axis.Middle.YMm);
        var cut = even.Mapped(p => p.XMm > 12 ? new(p.XMm + 0.5, p.YMm) : p);
        var marks = SectionMarks.None with { GuideAxis = axis };

        var laid = SectionAlignment.Align((cut, marks), (cut, marks), AlignmentChoice.AsPlaced with { IsMirrored = true }).ValueOrThrow();
        var samples = OutlineComparison.Samples(laid.Outline, cut);

        Assert.Equal(0.5, samples.Max(sample => sample.DeviationMm), 0.03);
        Assert.Equal(-0.5, samples.Min(sample => sample.DeviationMm), 0.03);
        Assert.InRange(samples.MaxBy(sample => sample.DeviationMm)!.Reference.XMm, 10, 20);
    }

    // Triangles (0,0)(1,0)(0,1) and (0,0)(2,0)(0,1): best turn 9.462322208°, rigid sum of squares 0.6114916465 (derived independently of
    // this program by complex Procrustes analysis, Dryden & Mardia; field guide, worked examples).
    [Fact]
    public void Marked_points_are_laid_together_by_least_squares()
    {
        SectionPoint[] small = [new(0, 0), new(1, 0), new(0, 1)];
        SectionPoint[] large = [new(0, 0), new(2, 0), new(0, 1)];

        var laid = SectionAlignment.Align(
            (Port, Named(large)), (Port, Named(small)), new(SectionAlignmentMethod.Points, new(AlignmentFreedom.None))).ValueOrThrow();

        var squares = small.Zip(large, (from, to) => Math.Pow(laid.Transform.Apply(from).DistanceTo(to), 2)).Sum();
        Assert.Equal(9.462322208, Math.Abs(laid.Transform.Turn.Degrees), 1e-6);
        Assert.Equal(0.6114916465, squares, 1e-9);
    }

    [Theory]
    [InlineData(SectionAlignmentMethod.GuideAxis, "no-guide-axis")]
    [InlineData(SectionAlignmentMethod.FloorLine, "no-floor-line")]
    [InlineData(SectionAlignmentMethod.Points, "no-points-in-both")]
    public void What_is_not_marked_is_told(SectionAlignmentMethod method, string code)
    {
        var laid = SectionAlignment.Align((Port, Marks), (Port, SectionMarks.None), new(method, new(AlignmentFreedom.None)));

        Assert.False(laid.TryGet(out _, out var problem));
        Assert.Equal(code, problem.Code);
    }

    [Theory]
    [InlineData(AlignmentFreedom.X)]
    [InlineData(AlignmentFreedom.Y)]
    [InlineData(AlignmentFreedom.X | AlignmentFreedom.Rotation)]
    [InlineData(AlignmentFreedom.Scale)]
    public void A_best_fit_changes_only_what_is_free(AlignmentFreedom free)
    {
        var moved = Port.Scaled(1.02).Turned(Angle.FromDegrees(2)).Moved(0.4, 0.3);

        var motion = OutlineAlignment.Fit(Port, moved, new(free, FitLoss.Tukey), SimilarityTransform.Identity).Transform;

        Assert.Equal(free.HasFlag(AlignmentFreedom.X), motion.XMm != 0);
        Assert.Equal(free.HasFlag(AlignmentFreedom.Y), motion.YMm != 0);
        Assert.Equal(free.HasFlag(AlignmentFreedom.Rotation), motion.Turn.Radians != 0);
        Assert.Equal(free.HasFlag(AlignmentFreedom.Scale), motion.Scale != 1);
    }

    private static SectionMarks Named(SectionPoint[] points) => SectionMarks.None with
    {
        Points = points.Select((point, i) => (Name: $"p{i}", point)).ToDictionary(each => each.Name, each => each.point),
    };
}
