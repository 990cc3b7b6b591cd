using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Quantities;
using SectionScan.Testing.Tests.Rendering;
using SectionScan.Testing.Truth;

namespace SectionScan.Testing.Tests.Truth;

public class SectionScoringTests
{
    // A 720-gon in place of a curve, and 2000 steps along it.
    private const double PolygonToleranceMm = 0.001;

    private static readonly SectionPlacement Place = new(new(100, 80), Angle.FromDegrees(10));

    [Fact]
    public void The_truth_itself_scores_zero_whatever_the_tag_says()
    {
        var truth = TruthOf(tagUpDegrees: 14);

        // A tag 4 degrees too far counter-clockwise: in its axes the section is turned 4 degrees clockwise.
        var score = SectionScoring.Score(truth, Turned(truth.Outline, -4), truth.PlacedOutline);

        Assert.Equal(0, score.AreaErrorPercent, 1e-9);
        Assert.Equal(0, score.WidthErrorMm, 1e-9);
        Assert.Equal(0, score.HeightErrorMm, 1e-9);
        Assert.Equal(0, score.Centred.MaximumMm, 1e-6);
        Assert.Equal(0, score.AsPlaced!.MaximumMm, 1e-6);
        Assert.Equal(1, score.AsPlaced.ShareWithin005Mm);
    }

    [Fact]
    public void A_scaled_circle_is_off_by_the_difference_of_the_radii()
    {
        var circle = SectionTruth.Of("circle", 1, TestScenes.Ellipse(15, 15), Place, false, 6, 0, Place.Up);

        var score = SectionScoring.Score(circle, TestScenes.Ellipse(15.04, 15.04));

        Assert.Equal(100 * ((15.04 * 15.04 / (15.0 * 15)) - 1), score.AreaErrorPercent, 1e-6);
        Assert.Equal(0.08, score.WidthErrorMm, 1e-9);
        Assert.Equal(0.04, score.Centred.MeanSignedMm, PolygonToleranceMm);
        Assert.Equal(0.04, score.Centred.Percentile95Mm, PolygonToleranceMm);
        Assert.Null(score.AsPlaced);
    }

    [Fact]
    public void A_shift_on_the_target_counts_as_placed_and_not_centred()
    {
        var truth = TruthOf(tagUpDegrees: 10);
        TargetPoint[] shifted = [.. truth.PlacedOutline.Select(p => new TargetPoint(p.XMm + 0.3, p.YMm))];

        var score = SectionScoring.Score(truth, truth.Outline, shifted);

        Assert.Equal(0, score.Centred.MaximumMm, 1e-6);
        Assert.Equal(0.3, score.CentroidErrorMm!.Value, 1e-9);
        Assert.InRange(score.AsPlaced!.MaximumMm, 0.29, 0.3 + PolygonToleranceMm);
        Assert.InRange(score.AsPlaced.MeanSignedMm, -0.005, 0.005);
    }

    private static SectionTruth TruthOf(double tagUpDegrees) =>
        SectionTruth.Of("oval", 1, TestScenes.Ellipse(18, 13), Place, false, 6, 0, Angle.FromDegrees(tagUpDegrees));

    private static SectionPoint[] Turned(SectionPoint[] points, double degrees)
    {
        var (sin, cos) = Math.SinCos(double.DegreesToRadians(degrees));
        return Array.ConvertAll(points, p => new SectionPoint((p.XMm * cos) - (p.YMm * sin), (p.XMm * sin) + (p.YMm * cos)));
    }
}
