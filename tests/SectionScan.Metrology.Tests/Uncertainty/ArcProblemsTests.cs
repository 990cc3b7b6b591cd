using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Metrology.Tests.Uncertainty;

public sealed class ArcProblemsTests
{
    private const string Remedy = " Use the width at several heights to describe this shape instead.";

    [Fact]
    public void Each_problem_says_where_what_and_what_to_do()
    {
        Assert.Equal(
            "roof: The middle of the roof has 3 points; a radius needs at least 8. Use an outline with more points.",
            ArcProblems.TooFewPoints("roof", 3, 8).ToString());
        Assert.Equal(
            "floor: The middle of the floor turns by 12° only; a radius needs at least 45°." + Remedy,
            ArcProblems.TooFlat("floor", Angle.FromDegrees(-12.3)).ToString());
        Assert.Equal(
            "floor: The middle of the floor bulges into the section, with a radius of 18.3 mm." + Remedy,
            ArcProblems.Hollow("floor", 18.25001).ToString());
        Assert.Equal(
            "roof: The middle of the roof strays 0.46 mm from the circle that fits it best." + Remedy,
            ArcProblems.NotRound("roof", 0.4567).ToString());
    }
}
