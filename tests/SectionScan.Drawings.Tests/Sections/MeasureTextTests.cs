using SectionScan.Drawings.Sections;

namespace SectionScan.Drawings.Tests.Sections;

public sealed class MeasureTextTests
{
    [Fact]
    public void A_length_is_shown_with_twice_its_standard_uncertainty()
    {
        Assert.Equal("38.42 ± 0.06 mm", MeasureText.Length(new(38.42, 0.03), LengthUnit.Millimetre));
        Assert.Equal("38.42 mm", MeasureText.Length(new(38.42, 0), LengthUnit.Millimetre));
    }

    [Fact]
    public void An_inch_is_25_4_mm()
    {
        Assert.Equal("1.5000 ± 0.0020 in", MeasureText.Length(new(38.1, 0.0254), LengthUnit.Inch));
        Assert.Equal("2.0000 ± 0.0100 in²", MeasureText.Area(new(1290.32, 3.2258), LengthUnit.Inch));
        Assert.Equal("+0.010 in", MeasureText.Deviation(0.254, LengthUnit.Inch));
    }

    [Theory]
    [InlineData(0.412, "+0.41 mm")]
    [InlineData(-0.2, "−0.20 mm")]
    [InlineData(0, "0.00 mm")]
    [InlineData(-0.001, "0.00 mm")]
    public void A_deviation_shows_its_sign(double deviation, string expected)
        => Assert.Equal(expected, MeasureText.Deviation(deviation, LengthUnit.Millimetre));
}
