using SectionScan.Cli.Options;

namespace SectionScan.Cli.Tests.Options;

public class UnitOptionTests
{
    // 1 in = 25.4 mm exactly: NIST Special Publication 811 (2008), appendix B.8.
    [Fact]
    public void An_inch_is_25_4_millimetres_in_every_power()
    {
        Assert.Equal(1, UnitOption.Inch.FromMm(25.4), 15);
        Assert.Equal(1, UnitOption.Inch.FromMm2(645.16), 14);
        Assert.Equal(1, UnitOption.Inch.FromMm3(16387.064), 14);
    }

    [Fact]
    public void Millimetres_stay_what_they_are_and_are_the_default()
    {
        Assert.Equal(default, UnitOption.Millimetre);
        Assert.Equal(12.5, UnitOption.Millimetre.FromMm(12.5));
        Assert.Equal(12.5, UnitOption.Millimetre.FromMm2(12.5));
        Assert.Equal(12.5, UnitOption.Millimetre.FromMm3(12.5));
    }

    [Theory]
    [InlineData("mm", "mm", "mm²", "mm³")]
    [InlineData(" IN ", "in", "in²", "in³")]
    public void Symbols_follow_the_unit_read(string text, string length, string area, string volume)
    {
        var unit = UnitOption.Parse(text).ValueOrThrow();

        Assert.Equal(length, unit.LengthSymbol);
        Assert.Equal(area, unit.AreaSymbol);
        Assert.Equal(volume, unit.VolumeSymbol);
    }

    [Theory]
    [InlineData("")]
    [InlineData("cm")]
    [InlineData("inch")]
    public void Other_units_are_refused(string text)
    {
        Assert.False(UnitOption.Parse(text).TryGet(out _, out var problem));
        Assert.Equal("unknown-unit", problem.Code);
    }
}
