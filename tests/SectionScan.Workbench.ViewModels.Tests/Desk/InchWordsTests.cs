using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.ViewModels.Tests.Desk;

/// <summary>One inch is 25.4 mm (NIST SP 811, 2008, B.8). Expected numbers were divided with bc.</summary>
public class InchWordsTests
{
    [Theory]
    [InlineData("A section is moved by up to 100 mm and turned by up to 180 degrees.", "A section is moved by up to 3.94 in and turned by up to 180 degrees.")]
    [InlineData("The clearance lies from 0.5 to 100 mm.", "The clearance lies from 0.020 to 3.94 in.")]
    [InlineData("The wall that was read lies between 0 and 50 mm.", "The wall that was read lies between 0 and 1.97 in.")]
    [InlineData("A limit of the area lies from 10 to 20000 mm².", "A limit of the area lies from 0.016 to 31.000 in².")]
    [InlineData("Scale from a rectangle of 254 × 50.8 mm.", "Scale from a rectangle of 10.00 × 2.000 in.")]
    [InlineData("circle, radius 3.5 mm at (24, -4.2) mm", "circle, radius 0.138 in at (0.94, -0.165) in")]
    [InlineData("x +0.40 mm, y −0.20 mm, turned +1.50°", "x +0.0157 in, y −0.0079 in, turned +1.50°")]
    [InlineData("Its area is 1043.6 ± 4.1 mm² at station 3, 2 of 4.", "Its area is 1.6176 ± 0.0064 in² at station 3, 2 of 4.")]
    [InlineData("Station 4, 2.0 mm beyond.", "Station 4, 0.079 in beyond.")]
    [InlineData("a place known to ±0.5 mm has 0.3 mm", "a place known to ±0.020 in has 0.012 in")]
    public void Lengths_are_told_in_inches_as_fine_as_they_were_in_millimetres(string said, string shown)
    {
        Assert.Equal(shown, InchWords.Of(said, isInch: true));
        Assert.Equal(said, InchWords.Of(said, isInch: false));
    }

    [Theory]
    [InlineData("12 mm⁴ and comm 3 mmol, 4 megapixels, DICT_4X4_50, 3.5mm jack")]
    [InlineData("")]
    public void What_is_no_length_stays(string said) => Assert.Equal(said, InchWords.Of(said, isInch: true));
}
