using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.Comparison;

public class PatternPlacementTests
{
    /// <summary>Fits end at steps of 1e-6 mm; limits are kept to 0.0002 mm.</summary>
    private const double FitMm = 5e-4;

    private static readonly Outline Shape = AnalyticShapes.Superellipse(17.5, 19.5, 2.6);

    private static readonly SimilarityTransform Known = new(1.3, -0.7, Angle.FromDegrees(2.4), 1, false);

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void A_pattern_finds_back_to_where_it_was_taken_from(int openings)
    {
        var pairs = Pairs(openings, Known);

        var placed = PatternPlacement.Fit(pairs, SimilarityTransform.Identity, PlacementLimits.None);

        Assert.Equal(Known.XMm, placed.Transform.XMm, FitMm);
        Assert.Equal(Known.YMm, placed.Transform.YMm, FitMm);
        Assert.Equal(Known.Turn.Degrees, placed.Transform.Turn.Degrees, 0.001);
        Assert.InRange(placed.RmsMm, 0, 1e-4);
        Assert.False(placed.IsAtLimit);
    }

    [Fact]
    public void A_shift_beyond_the_limit_ends_on_the_limits_circle_in_the_right_direction()
    {
        // Two circles on two others that stand off by (0.8, 0.6): the best within 0.5 mm is half the way.
        var pairs = new[] { 0.0, 60 }.Select(x =>
            new OutlinePair(AnalyticShapes.Circle(18).Moved(x + 0.8, 0.6), AnalyticShapes.Circle(18).Moved(x, 0))).ToList();

        var placed = PatternPlacement.Fit(pairs, SimilarityTransform.Identity, new() { MostShiftMm = 0.5 });

        Assert.Equal(0.4, placed.ShiftXMm, FitMm);
        Assert.Equal(0.3, placed.ShiftYMm, FitMm);
        Assert.True(placed.IsAtLimit);
    }

    [Fact]
    public void A_turn_beyond_the_limit_stops_at_the_limit()
    {
        var pairs = Pairs(2, Known);

        var placed = PatternPlacement.Fit(pairs, SimilarityTransform.Identity, new() { MostTurn = Angle.FromDegrees(1) });

        Assert.Equal(1, placed.Turn.Degrees, 0.001);
        Assert.True(placed.IsAtLimit);
    }

    [Fact]
    public void About_a_pivot_only_the_turn_is_free()
    {
        var pivot = new SectionPoint(-30, 5);
        var pairs = Pairs(2, new(
            pivot.XMm - (pivot.XMm * Math.Cos(0.03)) + (pivot.YMm * Math.Sin(0.03)),
            pivot.YMm - (pivot.XMm * Math.Sin(0.03)) - (pivot.YMm * Math.Cos(0.03)), Angle.FromRadians(0.03), 1, false));

        var placed = PatternPlacement.Fit(pairs, SimilarityTransform.Identity, new() { Plays = [new(pivot, pivot, 0)] });

        Assert.Equal(0.03, placed.Turn.Radians, 2e-5);
        Assert.Equal(0, placed.Transform.Apply(pivot).DistanceTo(pivot), 3e-4);
    }

    [Fact]
    public void Studs_keep_a_shift_within_their_play_and_the_better_direction_is_taken()
    {
        SectionPoint[] studs = [new(-35, 0), new(95, 0)];
        var pairs = new[] { 0.0, 60 }.Select(x =>
            new OutlinePair(AnalyticShapes.Circle(18).Moved(x, 1), AnalyticShapes.Circle(18).Moved(x, 0))).ToList();

        var placed = PatternPlacement.Fit(
            pairs, SimilarityTransform.Identity, new() { Plays = [.. studs.Select(stud => new PlacePlay(stud, stud, 0.25))] });

        Assert.Equal(0, placed.ShiftXMm, FitMm);
        Assert.Equal(0.25, placed.ShiftYMm, FitMm);
        Assert.All(studs, stud => Assert.InRange(placed.Transform.Apply(stud).DistanceTo(stud), 0, 0.2502));
    }

    [Fact]
    public void A_start_comes_from_places_told_in_pairs()
    {
        SectionPoint[] own = [new(0, 0), new(60, 0), new(30, 40)];

        var start = PatternPlacement.Start([.. own.Select(p => (Known.Apply(p), p))]);

        Assert.Equal(Known.XMm, start.XMm, 1e-9);
        Assert.Equal(Known.YMm, start.YMm, 1e-9);
        Assert.Equal(Known.Turn.Radians, start.Turn.Radians, 1e-12);
    }

    [Fact]
    public void The_place_is_as_uncertain_as_repeated_fits_of_noisy_edges_scatter()
    {
        var noise = new RandomEdgeEffect(0.05, 3);
        var placed = Pairs(2, SimilarityTransform.Identity);
        var stated = PlacementUncertainty.Of(
            [.. placed.Select(p => (p.Moved, (IReadOnlyList<OutlineErrorSource>)[new("edge", [noise])])), .. placed.Select(p => (p.Fixed, (IReadOnlyList<OutlineErrorSource>)[]))],
            new(26, 0));

        // Blocks of one correlation length that move independently are noise with that correlation length.
        var random = new Random(7);
        var shifts = Enumerable.Range(0, 60).Select(_ => PatternPlacement.Fit(
            [.. placed.Select(p => p with { Moved = Roughened(p.Moved, random) })], SimilarityTransform.Identity, PlacementLimits.None)).ToList();

        // 60 draws know a spread to 9 %; three times that.
        Assert.Equal(1, Spread(shifts.Select(s => s.ShiftXMm)) / stated.XMm, 0.3);
        Assert.Equal(1, Spread(shifts.Select(s => s.ShiftYMm)) / stated.YMm, 0.3);
        Assert.Equal(1, Spread(shifts.Select(s => s.Turn.Radians)) / stated.TurnRad, 0.3);
    }

    private static double Spread(IEnumerable<double> values) => Math.Sqrt(values.Average(v => v * v));

    private static Outline Roughened(Outline outline, Random random)
    {
        var length = 0.0;
        var (block, move) = (-1, 0.0);
        var points = new List<SectionPoint>();
        for (var i = 0; i < outline.Count; i++)
        {
            if ((int)(length / 3) != block)
            {
                block = (int)(length / 3);
                move = MathNet.Numerics.Distributions.Normal.Sample(random, 0, 0.05);
            }

            var (before, after) = (outline[i - 1], outline[i + 1]);
            var chord = before.DistanceTo(after);
            points.Add(new(
                outline[i].XMm + (move * (after.YMm - before.YMm) / chord), outline[i].YMm + (move * (before.XMm - after.XMm) / chord)));
            length += outline[i].DistanceTo(after);
        }

        return Outline.From(points).ValueOrThrow();
    }

    private static List<OutlinePair> Pairs(int openings, SimilarityTransform to) =>
        [.. Enumerable.Range(0, openings).Select(k => Shape.Moved(52 * k, 0.6 * k)).Select(own => new OutlinePair(to.Apply(own), own))];
}
