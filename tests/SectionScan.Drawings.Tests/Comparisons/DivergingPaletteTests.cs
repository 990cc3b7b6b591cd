using SectionScan.Drawings.Comparisons;
using SectionScan.Drawings.Pages;

namespace SectionScan.Drawings.Tests.Comparisons;

public sealed class DivergingPaletteTests
{
    [Fact]
    public void The_middle_is_a_light_grey_without_hue()
    {
        var middle = DivergingPalette.At(0);

        Assert.Equal(middle.Red, middle.Green);
        Assert.Equal(middle.Green, middle.Blue);
        Assert.True(middle.Red > 220);
    }

    [Fact]
    public void Inside_is_blue_and_outside_is_orange()
    {
        var (inside, outside) = (DivergingPalette.At(-1), DivergingPalette.At(1));

        Assert.True(inside.Blue > inside.Green && inside.Green > inside.Red);
        Assert.True(outside.Red > outside.Green && outside.Green > outside.Blue);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(1)]
    public void Larger_deviations_are_darker(int sign)
    {
        var luminances = Enumerable.Range(0, 11).Select(i => Luminance(DivergingPalette.At(sign * i / 10.0))).ToArray();

        Assert.Equal(luminances.OrderDescending(), luminances);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(1)]
    public void The_ends_stand_out_from_white_paper_as_graphics_must(int sign)
    {
        // WCAG 2.1, success criterion 1.4.11: 3:1 for graphics.
        Assert.True(1.05 / (Luminance(DivergingPalette.At(sign)) + 0.05) >= 3);
    }

    [Fact]
    public void What_is_no_number_has_no_colour() => Assert.Throws<ArgumentOutOfRangeException>(() => DivergingPalette.At(double.NaN));

    // Relative luminance after WCAG 2.1.
    private static double Luminance(Colour colour)
        => (0.2126 * Linear(colour.Red)) + (0.7152 * Linear(colour.Green)) + (0.0722 * Linear(colour.Blue));

    private static double Linear(byte channel)
    {
        var value = channel / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
    }
}
