using SectionScan.Drawings.Comparisons;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Drawings.Tests.Comparisons;

public sealed class ComparisonDrawingTests
{
    private static readonly ComparisonCaption Caption = new("Station 4", "exemplar", "finished");

    [Fact]
    public void Circles_one_millimetre_apart_give_one_band_all_round()
    {
        var page = Build(angle => 1);

        var band = Layer(page, "outside").First(item => item.Fill is not null);

        // Drawn 5:1, as 22 mm is enlarged to 110: radii 50 and 55 mm.
        Assert.Equal(2, band.Contours.Count);
        Assert.Equal(100, Width(band.Contours[0]), 1e-9);
        Assert.Equal(110, Width(band.Contours[1]), 1e-9);
        Assert.Empty(Layer(page, "inside"));
    }

    [Fact]
    public void Bands_change_side_where_the_deviation_passes_zero()
    {
        var page = Build(angle => 0.3 * Math.Cos(2 * angle));

        Assert.Equal(2, Layer(page, "outside").First(item => item.Fill is not null).Contours.Count);
        Assert.Equal(2, Layer(page, "inside").First(item => item.Fill is not null).Contours.Count);
    }

    [Fact]
    public void Both_extremes_are_marked_with_their_value()
    {
        var texts = Texts(Build(angle => (0.31 * Math.Cos(angle)) + 0.1));

        Assert.Contains("+0.41 mm", texts);
        Assert.Contains("−0.21 mm", texts);
    }

    [Fact]
    public void The_legend_says_what_each_sign_means_and_how_much_is_enlarged()
    {
        var texts = Texts(Build(angle => 0.3));

        Assert.Contains("+ outside the reference: metal already gone", texts);
        Assert.Contains("− inside the reference: metal left", texts);
        Assert.Contains("reference: exemplar", texts);
        Assert.Contains("measured: finished", texts);

        // 0.3 mm at 5:1 is 1.5 mm; five times that stays below the 8 mm that a band may reach, ten times does not.
        Assert.Contains("Drawn 5:1; bands show the deviation enlarged a further 5 times", texts);
    }

    [Fact]
    public void The_two_signs_differ_in_line_style_too()
    {
        var page = Build(angle => 0.3 * Math.Cos(angle));

        Assert.Empty(Layer(page, "outside").Last().Stroke!.DashesMm);
        Assert.NotEmpty(Layer(page, "inside").Last().Stroke!.DashesMm);
    }

    [Fact]
    public void A_perfect_match_has_no_bands()
    {
        var page = Build(angle => 0);

        Assert.Empty(Layer(page, "outside"));
        Assert.Empty(Layer(page, "inside"));
    }

    [Theory]
    [InlineData(0.02)]
    [InlineData(3)]
    public void Nothing_runs_over_the_edge_of_the_page(double amplitude)
        => PageChecks.AssertWithin(Build(angle => amplitude * Math.Cos(3 * angle)));

    [Theory]
    [InlineData(5, 0.02)]
    [InlineData(10, 3)]
    [InlineData(21.9, 0.4)]
    [InlineData(60, 6)]
    public void Two_small_drawings_fit_beside_each_other_on_a_sheet(double radius, double amplitude)
    {
        foreach (var unit in Enum.GetValues<LengthUnit>())
        {
            var page = Draw(ComparisonDrawing.Small, radius, angle => amplitude * Math.Cos(3 * angle), Caption with { Unit = unit, Notes = ["mean +0.00 mm, rms 0.20 mm"] });

            // Two and the 4 mm between them on A4 with margins of 18 mm.
            Assert.True(page.WidthMm <= (210 - 36 - 4) / 2.0);
            PageChecks.AssertWithin(page);
            Assert.Equal(2, Texts(page).Count(text => text.StartsWith('+') || text.StartsWith('−')));
        }
    }

    [Fact]
    public void Too_few_or_endless_deviations_are_refused()
    {
        var circle = Circle(angle => 10);
        DeviationMark[] two = [new(new(10, 0), 1, 0, 0.1), new(new(0, 10), 0, 1, 0.1)];

        Assert.Throws<ArgumentException>(() => ComparisonDrawing.Build(circle, circle, two, Caption));
        Assert.Throws<ArgumentException>(
            () => ComparisonDrawing.Build(circle, circle, [.. two, new(new(-10, 0), -1, 0, double.NaN)], Caption));
    }

    private static Page Build(Func<double, double> deviation) => Draw(ComparisonDrawing.Build, 10, deviation, Caption);

    private static Page Draw(
        Func<Outline, Outline, IReadOnlyList<DeviationMark>, ComparisonCaption, Page> draw, double radius, Func<double, double> deviation, ComparisonCaption caption)
    {
        var marks = Enumerable.Range(0, 360).Select(i =>
        {
            var angle = double.DegreesToRadians(i);
            var (sin, cos) = Math.SinCos(angle);
            return new DeviationMark(new(radius * cos, radius * sin), cos, sin, deviation(angle));
        }).ToArray();
        return draw(Circle(angle => radius), Circle(angle => radius + deviation(angle)), marks, caption);
    }

    private static Outline Circle(Func<double, double> radius) => Outline.From(Enumerable.Range(0, 360).Select(i =>
    {
        var angle = double.DegreesToRadians(i);
        var (sin, cos) = Math.SinCos(angle);
        return new SectionPoint(radius(angle) * cos, radius(angle) * sin);
    })).ValueOrThrow();

    private static PathItem[] Layer(Page page, string layer) => [.. page.Items.OfType<PathItem>().Where(item => item.Layer == layer)];

    private static string[] Texts(Page page) => [.. page.Items.OfType<TextItem>().Select(item => item.Text)];

    private static double Width(Contour contour) => contour.Points.Max(p => p.XMm) - contour.Points.Min(p => p.XMm);
}
