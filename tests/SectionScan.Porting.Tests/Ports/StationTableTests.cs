using SectionScan.Porting.Ports;

namespace SectionScan.Porting.Tests.Ports;

public sealed class StationTableTests
{
    [Fact]
    public void A_table_is_read_from_commas_with_comments_and_empty_cells()
    {
        var table = StationTableCsv.Read("# mould of 12 May\nstation,distance_mm,tilt_deg,turn_deg,u_mm\n2,18.5,3,,\n1,0,,,0.1\n\n", "s.csv").ValueOrThrow();

        Assert.Equal([1, 2], table.Positions.Select(p => p.Station));
        Assert.Equal([0, 18.5], table.Positions.Select(p => p.DistanceMm));
        Assert.Equal(3, table.Positions[1].Tilt.Degrees, 9);
        Assert.Equal([0.1, StationPosition.AssumedStandardUncertaintyMm], table.Positions.Select(p => p.DistanceStandardUncertaintyMm));
    }

    [Fact]
    public void Inches_become_millimetres() =>
        Assert.Equal(25.4, StationTableCsv.Read("Station;Distance_in\r\n1;0\r\n2;1\r\n", "s.csv").ValueOrThrow().Positions[1].DistanceMm, 12);

    [Theory]
    [InlineData("", "station-table-empty", "no rows")]
    [InlineData("station,distance_mm\n", "station-table-empty", "no rows")]
    [InlineData("station,distance_mm\n4,12\n", "one-station-only", "Only station 4")]
    [InlineData("station,distance_mm\n1,0\n2,9\n2,19\n", "station-twice-in-table", "Station 2 stands twice")]
    [InlineData("station,distance_mm\n1,0\n2,19\n3,9\n", "stations-out-of-order", "Station 3 lies at 9 mm, not beyond station 2 at 19 mm")]
    [InlineData("station,distance_mm\n1,0\n2,0\n", "stations-out-of-order", "Station 2 lies at 0 mm")]
    [InlineData("station,distance_mm\n1,0\n2,9000\n", "station-distance-out-of-range", "Station 2 at 9000 mm")]
    [InlineData("station,distance_mm,tilt_deg\n1,0,0\n2,9,60\n", "station-tilt-out-of-range", "leans 60°")]
    [InlineData("station,distance_mm,u_mm\n1,0,-1\n2,9,0\n", "station-uncertainty-out-of-range", "-1 mm")]
    [InlineData("station,distance_mm\n1,0\n2,far\n", "station-line-unusable", "Line 3 cannot be used: \"far\" under distance_mm")]
    [InlineData("station,distance_mm\n1,0\n2.5,9\n", "station-line-unusable", "is not a whole number")]
    [InlineData("station,distance_mm\n1,0\n2\n", "station-line-unusable", "it has 1 cells")]
    [InlineData("station,place\n1,0\n", "station-column-unknown", "\"place\"")]
    [InlineData("station\n1\n", "station-column-missing", "distance_mm")]
    public void A_table_that_cannot_be_used_says_why(string text, string code, string words)
    {
        StationTableCsv.Read(text, "s.csv").TryGet(out _, out var problem);

        Assert.Equal(code, problem?.Code);
        Assert.Contains(words, problem!.What, StringComparison.Ordinal);
        Assert.Equal("s.csv", problem.Where);
    }
}
