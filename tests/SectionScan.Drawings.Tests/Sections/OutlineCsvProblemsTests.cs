using SectionScan.Drawings.Sections;

namespace SectionScan.Drawings.Tests.Sections;

public sealed class OutlineCsvProblemsTests
{
    [Fact]
    public void A_missing_head_line_asks_for_one() => Assert.Equal(
        "a.csv: The first line does not name the columns and their unit. Begin the file with x_mm,y_mm or x_in,y_in.",
        OutlineCsvProblems.NoHead("a.csv").ToString());

    [Fact]
    public void A_bad_line_is_named_by_its_number() => Assert.Equal(
        "a.csv: Line 4 is not two numbers. Give x and y on each line, parted as in the first line.",
        OutlineCsvProblems.BadLine("a.csv", 4).ToString());

    [Fact]
    public void Too_many_corners_should_be_thinned_out() => Assert.Equal(
        "a.csv: There are more than 100000 corners. Thin the outline out; 360 to 2000 corners are enough.",
        OutlineCsvProblems.TooLong("a.csv").ToString());
}
