using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Testing.Sections;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.ViewModels.Tests.Desk;

public class QuantityTextTests
{
    // JCGM 100:2008, 7.2.2 and 7.2.6: a mass of 100.021 47 g with U = 0.70 mg (two digits) is stated as 100.021 47 ± 0.000 70.
    [Fact]
    public void The_value_goes_as_far_as_two_digits_of_its_uncertainty() =>
        Assert.Equal("100.02147 ± 0.00070 mm", QuantityText.LengthMm(new(100.02147, 0.00035), isInch: false));

    [Theory]
    [InlineData(0.286, 0.12, "+0.29 mm")]
    [InlineData(-0.4712, 0.12, "−0.47 mm")]
    [InlineData(0.001, 0.12, "0.00 mm")]
    public void A_deviation_has_a_sign_unless_it_is_nothing(double deviationMm, double expandedMm, string expected) =>
        Assert.Equal(expected, QuantityText.DeviationMm(deviationMm, expandedMm, isInch: false));

    [Fact]
    public void Areas_are_square_millimetres_or_square_inches()
    {
        var measured = MeasuredOutline.Of(SampleSections.Ellipse(40, 28), [new("edge", [new NormalOffsetEffect(0.02)])]);

        // The ellipse of the field guide, 3.3: 879.645943 mm² (an inscribed polygon of 360 points is 0.005 % less); u = P·0.02 mm.
        Assert.Equal("879.6 ± 4.3 mm²", QuantityText.Of(measured[MeasureCatalogue.Area], isInch: false));
        Assert.Equal("1.3634 ± 0.0067 in²", QuantityText.Of(measured[MeasureCatalogue.Area], isInch: true));
    }
}
