using CsCheck;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.Comparison;

public sealed class OutlineAlignmentTests
{
    /// <summary>A fit ends when a step is below 1e-7 mm.</summary>
    private const double Tolerance = 1e-5;

    /// <summary>A stadium with one end scaled: no symmetry but that of left and right upside down.</summary>
    private static readonly Outline Reference = AnalyticShapes.Stadium(14, 12).Mapped(p => new(
        p.XMm * (1 + (0.01 * p.YMm)), p.YMm * (1 + (0.004 * p.XMm))));

    [Fact]
    public void A_moved_and_turned_outline_is_brought_back() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Double[-3, 3], Gen.Double[-12, 12]).Sample(
            (x, y, degrees) =>
            {
                var measured = Reference.Turned(Angle.FromDegrees(degrees)).Moved(x, y);

                var aligned = OutlineAlignment.Align(Reference, measured, AlignmentMethod.BestFitWithRotation);

                Assert.Equal(-degrees, aligned.Transform.Turn.Degrees, 0.001);
                Assert.InRange(HausdorffDistance.Between(Reference, aligned.Outline), 0, 1e-4);
            },
            iter: 30);

    [Fact]
    public void A_best_fit_without_rotation_moves_only()
    {
        var aligned = OutlineAlignment.Align(Reference, Reference.Moved(1.5, -0.7), AlignmentMethod.BestFit);

        Assert.Equal(-1.5, aligned.Transform.XMm, Tolerance);
        Assert.Equal(0.7, aligned.Transform.YMm, Tolerance);
        Assert.Equal(0, aligned.Transform.Turn.Radians);
        Assert.Equal(1, aligned.Transform.Scale);
    }

    [Fact]
    public void A_wall_that_was_cut_pulls_the_centroid_and_the_best_fit_but_not_the_placed_outline()
    {
        // Left end out by 0.4 mm: the centroid follows the added area.
        var cut = Reference.Mapped(p => p.XMm < -20 ? new(p.XMm - 0.4, p.YMm) : p);

        var placed = OutlineAlignment.Align(Reference, cut, AlignmentMethod.AsPlaced);
        var centred = OutlineAlignment.Align(Reference, cut, AlignmentMethod.Centroids);

        Assert.Equal(SimilarityTransform.Identity, placed.Transform);
        Assert.InRange(centred.Transform.XMm, 0.01, 0.4);
        var (ours, theirs) = (PolygonMoments.Of(centred.Outline.Points).Centroid, PolygonMoments.Of(Reference.Points).Centroid);
        Assert.Equal(0, ours.DistanceTo(theirs), 1e-9);
    }

    [Fact]
    public void A_mirrored_outline_is_exchanged_left_for_right_before_it_is_fitted()
    {
        var left = Reference.Mirrored().Moved(2, 1);

        var aligned = OutlineAlignment.Align(Reference, left, AlignmentMethod.BestFitWithRotation, isMirrored: true);

        Assert.True(aligned.Transform.IsMirrored);
        Assert.InRange(HausdorffDistance.Between(Reference, aligned.Outline), 0, 1e-4);
        Assert.InRange(
            HausdorffDistance.Between(Reference, OutlineAlignment.Align(Reference, left, AlignmentMethod.BestFit).Outline), 0.3, 5);
    }

    [Theory]
    [InlineData(AlignmentFreedom.X)]
    [InlineData(AlignmentFreedom.Y)]
    [InlineData(AlignmentFreedom.Rotation)]
    [InlineData(AlignmentFreedom.Scale)]
    [InlineData(AlignmentFreedom.X | AlignmentFreedom.Rotation)]
    [InlineData(AlignmentFreedom.Y | AlignmentFreedom.Scale)]
    [InlineData(AlignmentFreedom.X | AlignmentFreedom.Y | AlignmentFreedom.Rotation | AlignmentFreedom.Scale)]
    public void A_fit_undoes_exactly_what_is_free_and_leaves_the_rest(AlignmentFreedom freedom)
    {
        var truth = new SimilarityTransform(
            freedom.HasFlag(AlignmentFreedom.X) ? 0.8 : 0,
            freedom.HasFlag(AlignmentFreedom.Y) ? -0.5 : 0,
            freedom.HasFlag(AlignmentFreedom.Rotation) ? Angle.FromDegrees(4) : default,
            freedom.HasFlag(AlignmentFreedom.Scale) ? 1.03 : 1,
            false);
        // Its inverse: scale and turn back about the origin, after moving back.
        var measured = Reference.Moved(-truth.XMm, -truth.YMm).Turned(-truth.Turn).Scaled(1 / truth.Scale);

        var aligned = OutlineAlignment.Fit(Reference, measured, freedom);

        Assert.Equal(truth.XMm, aligned.Transform.XMm, Tolerance);
        Assert.Equal(truth.YMm, aligned.Transform.YMm, Tolerance);
        Assert.Equal(truth.Turn.Degrees, aligned.Transform.Turn.Degrees, 1e-4);
        Assert.Equal(truth.Scale, aligned.Transform.Scale, 1e-6);
        Assert.InRange(HausdorffDistance.Between(Reference, aligned.Outline), 0, 1e-4);
    }

    [Fact]
    public void A_circle_has_no_turn_to_find_and_is_laid_on_its_like()
    {
        var aligned = OutlineAlignment.Align(
            AnalyticShapes.Circle(18), AnalyticShapes.Circle(18, 500).Moved(1, 2), AlignmentMethod.BestFitWithRotation);

        Assert.InRange(HausdorffDistance.Between(AnalyticShapes.Circle(18), aligned.Outline), 0, 0.001);
        Assert.InRange(Math.Abs(aligned.Transform.Turn.Degrees), 0, 16);
    }

    [Fact]
    public void An_unknown_method_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => OutlineAlignment.Align(Reference, Reference, (AlignmentMethod)9));
}
