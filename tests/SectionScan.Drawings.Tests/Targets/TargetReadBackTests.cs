using OpenCvSharp;
using OpenCvSharp.Aruco;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Targets;

namespace SectionScan.Drawings.Tests.Targets;

/// <summary>The printed targets read back by OpenCV from poppler's pixels.</summary>
public sealed class TargetReadBackTests
{
    // What the targets promise; half a pixel at 600 dpi.
    private const double DistanceToleranceMm = 0.02;

    // Corners of the blank window: one square of four is missing, so they are no saddle points.
    private static readonly int[] WindowCorners = [13, 22, 73, 82];

    public static TheoryData<string> Papers => ["a4", "letter"];

    [Theory]
    [MemberData(nameof(Papers))]
    public void All_36_saddle_points_of_the_sheet_stand_at_their_distances(string paper)
    {
        using var printed = Printed(TargetKind.Sheet, paper);

        var corners = Detected(printed, 13, 9, 0.020f, 0.015f, PredefinedDictionaryType.Dict5X5_100);

        Assert.Equal(40, corners.Count);
        Assert.All(WindowCorners, id => Assert.True(corners.Remove(id)));
        AssertDistances(corners, 12, 20);
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void All_28_saddle_points_of_the_card_stand_at_their_distances(string paper)
    {
        using var printed = Printed(TargetKind.Card, paper);

        var corners = Detected(printed, 8, 5, 0.010f, 0.0075f, PredefinedDictionaryType.Dict4X4_50);

        Assert.Equal(28, corners.Count);
        AssertDistances(corners, 7, 10);
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void Every_station_tag_decodes_upright_and_10_mm_wide(string paper)
    {
        using var printed = Printed(TargetKind.StationTags, paper);
        using var dictionary = CvAruco.GetPredefinedDictionary(PredefinedDictionaryType.DictAprilTag_36h11);

        using var detector = new ArucoDetector(dictionary);
        detector.DetectMarkers(printed.Pixels, out var corners, out var ids, out _);

        Assert.Equal(Enumerable.Range(0, 35), ids.Order());
        foreach (var tag in corners)
        {
            // Clockwise from the top left: the tag's own up is the page's. Marker corners are whole pixels before refinement.
            var (right, down) = (tag[1] - tag[0], tag[3] - tag[0]);
            Assert.Equal(10, right.X / PrintedPage.PixelsPerMm, 0.1);
            Assert.Equal(0, right.Y / PrintedPage.PixelsPerMm, 0.1);
            Assert.Equal(10, down.Y / PrintedPage.PixelsPerMm, 0.1);
        }
    }

    [Theory]
    [InlineData(TargetKind.Sheet, "a4", 200, 150)]
    [InlineData(TargetKind.Sheet, "letter", 200, 150)]
    [InlineData(TargetKind.Card, "a4", 80, 50)]
    [InlineData(TargetKind.Card, "letter", 80, 50)]
    [InlineData(TargetKind.StationTags, "a4", 150, 150)]
    [InlineData(TargetKind.StationTags, "letter", 150, 150)]
    public void Check_bars_have_the_length_printed_on_them(TargetKind kind, string paper, double acrossMm, double upMm)
    {
        var page = TargetPage.Build(kind, PaperSize.FromName(paper)!);
        using var printed = PrintedPage.Of(page);

        // The end lines are the paths of two parallel strokes 0.2 mm wide; where they lie is read from the page, how far apart the
        // ink is from the pixels.
        var ticks = page.Items.OfType<PathItem>().Where(item => item is { Layer: "check-bar", Stroke.WidthMm: 0.2 }).ToArray();
        var spans = ticks.Select(tick => Span(printed, tick)).ToArray();

        Assert.Equal(2, spans.Length);
        Assert.Equal(acrossMm, spans[0].XMm, DistanceToleranceMm);
        Assert.Equal(0, spans[0].YMm, DistanceToleranceMm);
        Assert.Equal(upMm, -spans[1].YMm, DistanceToleranceMm);
        Assert.Equal(0, spans[1].XMm, DistanceToleranceMm);
        var labels = page.Items.OfType<TextItem>().Where(item => item.Layer == "check-bar").Select(item => item.Text);
        Assert.Equal([FormattableString.Invariant($"{acrossMm} mm"), FormattableString.Invariant($"{upMm} mm")], labels);
    }

    [Theory]
    [InlineData("a4", 297, 210)]
    [InlineData("letter", 279.4, 215.9)]
    public void The_sheet_keeps_its_window_its_quiet_zone_and_the_papers_edge_free_of_ink(string paper, double widthMm, double heightMm)
    {
        using var printed = Printed(TargetKind.Sheet, paper);

        var corners = Detected(printed, 13, 9, 0.020f, 0.015f, PredefinedDictionaryType.Dict5X5_100);
        var (left, top) = (corners[0].X - 20, corners[0].Y - 20);

        // 0.1 mm less than promised: edges that fall between pixels are grey.
        const double Slack = 0.1;
        Assert.Equal(0, printed.InkedPixels(left + 40 + Slack, top + 40 + Slack, 180 - (2 * Slack), 100 - (2 * Slack)));
        Assert.Equal(0, printed.InkedPixels(left - 5, top - 5, 5 - Slack, 190));
        Assert.Equal(0, printed.InkedPixels(left + 260 + Slack, top - 5, 5 - Slack, 190));
        Assert.Equal(0, printed.InkedPixels(left - 5, top - 5, 270, 5 - Slack));
        Assert.Equal(0, printed.InkedPixels(left - 5, top + 180 + Slack, 270, 5 - Slack));
        Assert.Equal(0, printed.InkedPixels(0, 0, widthMm, 5 - Slack));
        Assert.Equal(0, printed.InkedPixels(0, heightMm - 5 + Slack, widthMm, 5 - Slack));
        Assert.Equal(0, printed.InkedPixels(0, 0, 5 - Slack, heightMm));
        Assert.Equal(0, printed.InkedPixels(widthMm - 5 + Slack, 0, 5 - Slack, heightMm));
    }

    private static PrintedPage Printed(TargetKind kind, string paper) => PrintedPage.Of(TargetPage.Build(kind, PaperSize.FromName(paper)!));

    // Corners by id in mm from the page's top-left corner. OpenCV gives ChArUco corners with the origin at the first pixel's edge.
    private static Dictionary<int, Point2d> Detected(
        PrintedPage printed,
        int columns,
        int rows,
        float square,
        float marker,
        PredefinedDictionaryType type)
    {
        using var dictionary = CvAruco.GetPredefinedDictionary(type);
        using var board = new CharucoBoard(columns, rows, square, marker, dictionary);
        using var detector = new CharucoDetector(board);
        detector.DetectBoard(printed.Pixels, out var corners, out var ids, out _, out _);
        return ids.Zip(corners).ToDictionary(
            pair => pair.First,
            pair => new Point2d(pair.Second.X / PrintedPage.PixelsPerMm, pair.Second.Y / PrintedPage.PixelsPerMm));
    }

    private static void AssertDistances(Dictionary<int, Point2d> corners, int across, double squareMm)
    {
        foreach (var (a, at) in corners)
        {
            foreach (var (b, other) in corners)
            {
                var expected = squareMm * Math.Sqrt(Math.Pow((a % across) - (b % across), 2) + Math.Pow((a / across) - (b / across), 2));
                Assert.Equal(expected, at.DistanceTo(other), DistanceToleranceMm);
            }
        }
    }

    private static (double XMm, double YMm) Span(PrintedPage printed, PathItem ticks)
    {
        var middles = ticks.Contours.Select(tick => OffTheLine(tick.Points[0], tick.Points[1])).ToArray();
        var (from, to) = (Ink(middles[0]), Ink(middles[1]));
        return (to.XMm - from.XMm, to.YMm - from.YMm);

        // Half way from the bar's own line to the end of the end line, so that only the end line's ink counts.
        static PagePoint OffTheLine(PagePoint a, PagePoint b) => new(b.XMm + ((a.XMm - b.XMm) / 4), b.YMm + ((a.YMm - b.YMm) / 4));

        (double XMm, double YMm) Ink(PagePoint at) => printed.InkCentre(at.XMm - 0.3, at.YMm - 0.3, 0.6, 0.6);
    }
}
