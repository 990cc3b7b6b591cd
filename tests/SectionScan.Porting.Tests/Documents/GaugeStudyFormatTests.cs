using SectionScan.Metrology.GaugeStudies;
using SectionScan.Porting.Documents;

namespace SectionScan.Porting.Tests.Documents;

public sealed class GaugeStudyFormatTests
{
    private static readonly GaugeStudy Study = new(
        "sheet", [0.998, 1.001], true, ["Example phone"], 0.1, [new("slot", PlugShape.Stadium, 36, 24, 0.002)],
        [new("a.jpg", "slot", "Ann", "phone", "A", 0.013, 0.1)], new(0.004, 0.003, -0.0002, 0.0001), 0.011, 12, 0.007, 2,
        [new("person", ["Ann", "Bob"], 0.007), new("sheet", ["A"], null)]);

    [Fact]
    public void A_study_reads_back_as_it_was_written()
    {
        var text = GaugeStudyFormat.Write(Study);
        var read = GaugeStudyFormat.Read(text, "shop.gauge.json").ValueOrThrow();

        Assert.StartsWith("{\n  \"schema\": \"sectionscan/gauge/1\"", text, StringComparison.Ordinal);
        Assert.Equal(text, GaugeStudyFormat.Write(read));
        Assert.Equal((Study.Bias, Study.Plugs[0], Study.Readings[0]), (read.Bias, read.Plugs[0], read.Readings[0]));
        Assert.Equal(Study.EdgeStandardUncertaintyMm, read.EdgeStandardUncertaintyMm);
        Assert.Contains("\"shape\": \"stadium\"", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("sectionscan/gauge/1", "sectionscan/gauge/9")]
    [InlineData("\"edgeMm\": 0.004", "\"edgeMm\": 4")]
    [InlineData("\"pixelMm\": 0.1", "\"pixelMm\": 0")]
    [InlineData("\"repeatabilityFreedom\": 12", "\"repeatabilityFreedom\": 0")]
    [InlineData("\"target\": \"sheet\"", "\"target\": \"wall\"")]
    [InlineData("\"shape\": \"stadium\"", "\"shape\": \"star\"")]
    [InlineData("\"plugs\": [", "\"plug\": [")]
    public void A_study_that_cannot_be_used_is_refused(string part, string instead)
    {
        var text = GaugeStudyFormat.Write(Study);
        Assert.Contains(part, text, StringComparison.Ordinal);

        Assert.False(GaugeStudyFormat.Read(text.Replace(part, instead, StringComparison.Ordinal), "shop.gauge.json").TryGet(out _, out var problem));

        Assert.Equal(("not-a-gauge-study", "shop.gauge.json"), (problem.Code, problem.Where));
    }

    [Fact]
    public void Any_start_of_a_study_is_refused_and_nothing_throws()
    {
        var text = GaugeStudyFormat.Write(Study).TrimEnd();
        Assert.All(Enumerable.Range(0, text.Length), length => Assert.False(GaugeStudyFormat.Read(text[..length], "f").TryGet(out _, out _)));
    }
}
