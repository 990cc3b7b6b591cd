using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Drawings.Tests.Lettering;

public sealed class StrokeFontTests
{
    // Coordinates pass through a rotation in doubles.
    private const double RoundingMm = 1e-9;

    [Fact]
    public void A_capital_is_as_tall_as_asked_and_stands_on_the_baseline()
    {
        var points = Points(new(new(10, 20), "H", 5, Colour.Black));

        Assert.Equal(15, points.Min(p => p.YMm), RoundingMm);
        Assert.Equal(20, points.Max(p => p.YMm), RoundingMm);
        Assert.Equal(10, points.Min(p => p.XMm), RoundingMm);
    }

    [Theory]
    [InlineData(TextAnchor.Start, 10)]
    [InlineData(TextAnchor.Middle, 10 - (10.5 / 2))]
    [InlineData(TextAnchor.End, 10 - 10.5)]
    public void The_anchor_stands_at_the_position(TextAnchor anchor, double left)
    {
        // At a cap height of 10: N 6.8, gap 2.4, l 1.3.
        var item = new TextItem(new(10, 20), "Nl", 10, Colour.Black) { Anchor = anchor };

        Assert.Equal(10.5, StrokeFont.WidthMm("Nl", 10), RoundingMm);
        Assert.Equal(left, Points(item).Min(p => p.XMm), RoundingMm);
    }

    [Fact]
    public void A_quarter_turn_counter_clockwise_reads_upward()
    {
        var points = Points(new(new(10, 20), "H", 5, Colour.Black) { Turn = Angle.FromDegrees(90) });

        Assert.Equal(5, points.Min(p => p.XMm), RoundingMm);
        Assert.Equal(10, points.Max(p => p.XMm), RoundingMm);
        Assert.Equal(20, points.Max(p => p.YMm), RoundingMm);
        Assert.True(points.Min(p => p.YMm) < 17);
    }

    [Fact]
    public void Every_printable_character_of_ASCII_and_Latin_1_letters_and_the_signs_of_measuring_are_known()
    {
        var ascii = new string([.. Enumerable.Range(32, 95).Select(code => (char)code)]);
        var latin1 = new string([.. Enumerable.Range(0xC0, 64).Select(code => (char)code)]);

        Assert.True(StrokeFont.CanWrite(ascii));
        Assert.True(StrokeFont.CanWrite(latin1));
        Assert.True(StrokeFont.CanWrite("±×÷−–°²³µσΔΩØ≤≥≈→↑“”’…"));
        Assert.False(StrokeFont.CanWrite("日"));
    }

    [Fact]
    public void Text_is_broken_at_spaces_and_no_word_is_lost()
    {
        const string Text = "Measure both bars with a caliper, across and up, then give the ratios";

        var lines = StrokeFont.Wrapped(Text, 2, 40);

        Assert.All(lines, line => Assert.True(StrokeFont.WidthMm(line, 2) <= 40));
        Assert.Equal(Text, string.Join(' ', lines));
        Assert.Equal(["unbreakable"], StrokeFont.Wrapped("unbreakable", 10, 5));
        Assert.Empty(StrokeFont.Wrapped("  ", 10, 5));
    }

    private static List<PagePoint> Points(TextItem item) => [.. StrokeFont.ToPath(item).Contours.SelectMany(contour => contour.Points)];
}
