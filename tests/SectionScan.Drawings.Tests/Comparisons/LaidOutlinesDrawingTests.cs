using SectionScan.Drawings.Comparisons;
using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Testing.Sections;

namespace SectionScan.Drawings.Tests.Comparisons;

public class LaidOutlinesDrawingTests
{
    [Theory]
    [InlineData(LengthUnit.Millimetre)]
    [InlineData(LengthUnit.Inch)]
    public void Outlines_and_their_courses_share_a_page(LengthUnit unit)
    {
        var page = LaidOutlinesDrawing.Build(
            [.. new[] { 40.0, 40.4, 41.2 }.Select((diameter, i) => new LaidOutline(
                $"cylinder {i + 1}", SampleSections.Ellipse(diameter, diameter), [.. Enumerable.Range(-18, 36).Select(k => (10.0 * k, (diameter - 40) / 2))]))],
            new("Spread, station 3", "cylinder 1", new(20.6, 0), "0.60 mm apart", [new string('w', 20) + " note"], unit));

        PageChecks.AssertWithin(page);
        Assert.Equal(3, page.Items.Count(item => item.Layer == "outline"));
        var words = page.Items.OfType<TextItem>().Select(item => item.Text).ToList();
        Assert.All(words, text => Assert.True(StrokeFont.CanWrite(text), text));
        Assert.Superset(new HashSet<string> { "cylinder 1", "cylinder 2", "cylinder 3", "roof", "floor", "0.60 mm apart" }, words.ToHashSet());

        // Each course keeps its height all round, and the third lies as far above the second as it should.
        var courses = page.Items.OfType<PathItem>().Where(item => item.Layer == "series").Select(item => item.Contours.Single().Points).ToList();
        Assert.All(courses, course => Assert.Equal(course[0].YMm, course[^1].YMm, 1e-9));
        Assert.Equal(2, (courses[1][0].YMm - courses[2][0].YMm) / (courses[0][0].YMm - courses[1][0].YMm), 1e-9);
    }
}
