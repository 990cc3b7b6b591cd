using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.Templates;
using SectionScan.Metrology.Outlines;
using SectionScan.Porting.Templates;
using SectionScan.Testing.Sections;

namespace SectionScan.Drawings.Tests.Templates;

/// <summary>Templates as a printer and a browser draw them, measured against the outline that they are for.</summary>
public class TemplatePagesTests
{
    /// <summary>What a template must keep everywhere.</summary>
    private const double EdgeMm = 0.05;

    private const double LineMm = 0.1;

    [Theory]
    [InlineData(TemplateKind.Inside, TemplateStage.Finish, "a4")]
    [InlineData(TemplateKind.Inside, TemplateStage.Rough, "letter")]
    [InlineData(TemplateKind.Outside, TemplateStage.Finish, "letter")]
    [InlineData(TemplateKind.Outside, TemplateStage.Rough, "a3")]
    public void The_printed_edge_lies_on_the_outline_everywhere(TemplateKind kind, TemplateStage stage, string paper)
    {
        var template = Template(SampleSections.Blob(4, 360), kind, stage);
        var page = Assert.Single(Pages([template], paper, PrintCorrection.None));
        using var print = PrintedInk.OfPdf(page);

        Assert.InRange(LargestError(print, page, template, PrintCorrection.None), 0, EdgeMm);
    }

    [Theory]
    [InlineData(TemplateKind.Inside)]
    [InlineData(TemplateKind.Outside)]
    public void Chromium_shows_the_edge_on_the_outline_everywhere(TemplateKind kind)
    {
        var template = Template(SampleSections.Blob(8, 360), kind, TemplateStage.Finish);
        var page = Assert.Single(Pages([template], "a4", PrintCorrection.None));
        using var screen = PrintedInk.OfSvg(page);

        Assert.InRange(LargestError(screen, page, template, PrintCorrection.None), 0, EdgeMm);
    }

    [Fact]
    public void A_printer_that_prints_short_across_and_long_up_gives_a_true_template()
    {
        var printer = new PrintCorrection(0.99, 1.004);
        var template = Template(SampleSections.Blob(4, 360), TemplateKind.Inside, TemplateStage.Finish);
        var page = Assert.Single(Pages([template], "a4", printer));
        using var print = PrintedInk.OfPdf(page);

        Assert.Equal((297.0, 210.0), (Math.Round(page.WidthMm, 9), Math.Round(page.HeightMm, 9)));
        Assert.InRange(LargestError(print, page, template, printer), 0, EdgeMm);
        Assert.True(LargestError(print, page, template, PrintCorrection.None) > 0.1);
    }

    [Fact]
    public void Several_templates_share_a_page_without_touching()
    {
        var templates = Enumerable.Range(1, 9)
            .Select(number => Template(SampleSections.Blob(number), number % 3 == 0 ? TemplateKind.Outside : TemplateKind.Inside, TemplateStage.Finish)).ToList();

        var pages = Pages(templates, "a4", PrintCorrection.None);

        Assert.InRange(pages.Count, 1, 3);
        Assert.All(pages, PageChecks.AssertWithin);
        foreach (var page in pages)
        {
            var boxes = page.Items.OfType<PathItem>().Where(item => item.Layer is TemplateLayers.Plug or TemplateLayers.Plate)
                .Select(item => Box(item.Contours.Single())).ToList();
            Assert.All(Pairs(boxes), pair => Assert.True(
                pair.A.Right < pair.B.Left || pair.B.Right < pair.A.Left || pair.A.Bottom < pair.B.Top || pair.B.Bottom < pair.A.Top));
        }

        Assert.Equal(9, pages.Sum(page => page.Items.Count(item => item.Layer is TemplateLayers.Plug or TemplateLayers.Plate)));
    }

    [Fact]
    public void A_template_larger_than_the_page_is_spread_over_pages_that_together_hold_all_of_it()
    {
        var template = Template(SampleSections.Ellipse(380, 260, 720), TemplateKind.Inside, TemplateStage.Finish);

        var pages = Pages([template], "a4", PrintCorrection.None);

        Assert.Equal(4, pages.Count);
        Assert.All(pages, PageChecks.AssertWithin);
        var path = template.CutPath(LineMm).ValueOrThrow();
        var lengths = pages.SelectMany(page => page.Items.OfType<PathItem>()).Where(item => item.Layer == TemplateLayers.Plug)
            .SelectMany(item => item.Contours).Sum(Length);
        var whole = Length(new([.. path.Points.ToArray().Select(p => new PagePoint(p.XMm, p.YMm))], IsClosed: true));

        // The strips that neighbours share are drawn twice: 12 mm wide, crossed by the ellipse four times, and not much aslant.
        Assert.InRange(lengths, whole + 40, whole + 80);
        Assert.All(pages, page => Assert.Equal(4, page.Items.OfType<PathItem>().Count(item => item.Layer == "joint" && item.Contours.Count == 2)));
    }

    [Fact]
    public void Every_letter_on_a_template_can_be_drawn()
    {
        var templates = new[] { TemplateKind.Inside, TemplateKind.Outside }.Select(kind => Template(SampleSections.Blob(3), kind, TemplateStage.Rough)).ToList();

        var pages = Pages(templates, "a4", new(0.998, 1.001));

        Assert.All(pages.SelectMany(page => page.Items.OfType<TextItem>()), text => Assert.True(StrokeFont.CanWrite(text.Text), text.Text));
        Assert.All(templates.SelectMany(template => TemplateDrawing.Build(template, 0.1, PlugHold.Handle()).ValueOrThrow().Texts), text => Assert.True(StrokeFont.CanWrite(text.Text), text.Text));
        var words = string.Join(' ', pages[0].Items.OfType<TextItem>().Select(text => text.Text));
        Assert.Contains("--print-ratio 0.9980·X,1.0010·Y", words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(TemplateKind.Inside)]
    [InlineData(TemplateKind.Outside)]
    public void The_kerf_is_taken_from_the_waste(TemplateKind kind)
    {
        var template = Template(SampleSections.Ellipse(40, 28, 720), kind, TemplateStage.Finish);

        var path = template.CutPath(0.2).ValueOrThrow();

        // Steiner: the path of a plug runs 0.1 mm outside, that of a cut-out 0.1 mm inside.
        var (area, perimeter) = (879.645943005, 107.647379629);
        var expected = kind == TemplateKind.Inside ? area + (0.1 * perimeter) + (0.01 * Math.PI) : area - (0.1 * perimeter) + (0.01 * Math.PI);
        Assert.Equal(expected, PolygonMoments.Of(path.Points).AreaMm2, 0.02);
    }

    [Fact]
    public void A_plug_has_a_hole_for_its_stem_and_each_cut_line_is_closed()
    {
        var plug = TemplateDrawing.Build(Template(SampleSections.Blob(1), TemplateKind.Inside, TemplateStage.Finish), 0, PlugHold.Stem(5)).ValueOrThrow();
        var plate = TemplateDrawing.Build(Template(SampleSections.Blob(1), TemplateKind.Outside, TemplateStage.Finish), 0, PlugHold.Stem(5)).ValueOrThrow();

        Assert.Equal([TemplateLayers.Plug, TemplateLayers.Hole], plug.Lines.Where(line => TemplateLayers.IsCut(line.Layer)).Select(line => line.Layer));
        Assert.Equal(
            [TemplateLayers.CutOut, TemplateLayers.Plate, TemplateLayers.Hole],
            plate.Lines.Where(line => TemplateLayers.IsCut(line.Layer)).Select(line => line.Layer));
        Assert.All(plug.Lines.Concat(plate.Lines), line => Assert.Equal(TemplateLayers.IsCut(line.Layer), line.IsClosed));
        Assert.Contains(plug.Texts, text => text.Text == "station 3, finish");
        Assert.Contains(plate.Texts, text => text.Text == "inlet 2");
    }

    [Theory]
    [InlineData(40, 28, 12)]
    [InlineData(18, 18, 10)]
    [InlineData(9, 9, 0)]
    public void A_handles_tongue_goes_through_the_slot_and_its_shoulders_do_not(double widthMm, double heightMm, double tongueMm)
    {
        var (hold, kerf) = (PlugHold.Handle(2), 0.2);
        var plug = TemplateDrawing.Build(Template(SampleSections.Ellipse(widthMm, heightMm), TemplateKind.Inside, TemplateStage.Finish), kerf, hold).ValueOrThrow();
        var handles = TemplateDrawing.Handles([plug, plug], kerf, hold, LengthUnit.Millimetre);

        if (tongueMm == 0)
        {
            Assert.Empty(handles); // too small for any: the plug stays whole
            Assert.Single(plug.Lines, line => TemplateLayers.IsCut(line.Layer));
            return;
        }

        // What is left when a cutter of 0.2 mm has run along the lines: the hole grows by half of it, the handle shrinks.
        var slot = plug.Lines.Single(line => line.Layer == TemplateLayers.Hole).Points;
        var (length, width) = (slot.Max(p => p.XMm) - slot.Min(p => p.XMm) + kerf, slot.Max(p => p.YMm) - slot.Min(p => p.YMm) + kerf);
        var border = Assert.Single(handles).Lines.Single(line => line.Layer == TemplateLayers.Handle).Points;
        var tongue = border.Where(p => p.YMm < -0.5).ToList();
        Assert.Equal(tongueMm, tongue.Max(p => p.XMm) - tongue.Min(p => p.XMm) - kerf, 1e-6);
        Assert.Equal((tongueMm + 0.2, 2.1), (Math.Round(length, 6), Math.Round(width, 6)));
        Assert.Equal(2, -border.Min(p => p.YMm) - (kerf / 2), 1e-6); // as long as the sheet is thick
        Assert.Equal(tongueMm + 6, border.Max(p => p.XMm) - border.Min(p => p.XMm) - kerf, 1e-6);
        Assert.Equal(tongueMm, plug.TongueMm);
    }

    private static SectionTemplate Template(Outline target, TemplateKind kind, TemplateStage stage) =>
        SectionTemplate.Of(target, "p01.station-3", "inlet 2", 3, kind, stage, SectionTemplate.UsualAllowanceMm, 0).ValueOrThrow();

    private static IReadOnlyList<Page> Pages(IReadOnlyList<SectionTemplate> templates, string paper, PrintCorrection correction) => TemplatePages.Build(
        [.. templates.Select(template => TemplateDrawing.Build(template, LineMm, PlugHold.Handle()).ValueOrThrow())], "Templates", PaperSize.FromName(paper)!, LineMm, correction);

    /// <summary>The largest distance of the ink's edge from the outline, at a place every 0.1 mm, in true millimetres of the paper.</summary>
    private static double LargestError(PrintedInk print, Page page, SectionTemplate template, PrintCorrection printer)
    {
        var layer = template.Kind == TemplateKind.Inside ? TemplateLayers.Plug : TemplateLayers.CutOut;
        var drawn = Box(page.Items.OfType<PathItem>().Single(item => item.Layer == layer).Contours.Single());
        var (middleX, middleY) = ((drawn.Left + drawn.Right) / 2 * printer.Across, (drawn.Top + drawn.Bottom) / 2 * printer.Up);
        var outline = template.Port;
        var own = outline.Points.ToArray();
        var (ownX, ownY) = ((own.Min(p => p.XMm) + own.Max(p => p.XMm)) / 2, (own.Min(p => p.YMm) + own.Max(p => p.YMm)) / 2);
        var places = outline.Resampled(1200);
        var worst = 0.0;
        for (var i = 0; i < places.Length; i++)
        {
            var (before, after) = (places[(i + places.Length - 1) % places.Length], places[(i + 1) % places.Length]);
            var length = before.DistanceTo(after);
            var toWaste = template.Kind == TemplateKind.Inside ? 1 : -1;
            var (x, y) = (toWaste * (after.YMm - before.YMm) / length, toWaste * (after.XMm - before.XMm) / length);
            var place = new PagePoint((middleX + places[i].XMm - ownX) / printer.Across, (middleY - places[i].YMm + ownY) / printer.Up);
            var begins = print.InkBegins(place, x, y);
            worst = double.IsNaN(begins) ? double.PositiveInfinity : Math.Max(worst, Math.Abs(begins));
        }

        return worst;
    }

    private static (double Left, double Top, double Right, double Bottom) Box(Contour contour) => (
        contour.Points.Min(p => p.XMm), contour.Points.Min(p => p.YMm), contour.Points.Max(p => p.XMm), contour.Points.Max(p => p.YMm));

    private static double Length(Contour contour) => Enumerable.Range(0, contour.IsClosed ? contour.Points.Count : contour.Points.Count - 1).Sum(i =>
    {
        var (from, to) = (contour.Points[i], contour.Points[(i + 1) % contour.Points.Count]);
        return double.Hypot(to.XMm - from.XMm, to.YMm - from.YMm);
    });

    private static IEnumerable<(T A, T B)> Pairs<T>(List<T> items) =>
        items.SelectMany((a, i) => items.Skip(i + 1).Select(b => (a, b)));
}
