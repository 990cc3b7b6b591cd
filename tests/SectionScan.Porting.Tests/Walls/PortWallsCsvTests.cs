using SectionScan.Porting.Walls;
using SectionScan.Testing.Sections;

namespace SectionScan.Porting.Tests.Walls;

public class PortWallsCsvTests
{
    private const string Table =
        """
        kind,station,name,x_mm,y_mm,radius_mm,wall_mm,u_mm,limit_mm,source,note
        circle,3,oil drain,24,6,4,,0.3,,drawing,"10 mm drill, from the drawing"
        line,,spring pocket,-12,19,,,0.2,3,measured,
        line,,spring pocket,12,19.5,,,0.2,,measured,
        outline,4,water jacket,-25,-5,,,0.15,,measured,"said ""thin"" here"
        outline,4,water jacket,-21,-5,,,0.15,,,
        outline,4,water jacket,-21,5,,,0.15,,,
        reading,3,roof,0,15,,3.4,0.06,,,caliper
        """;

    [Fact]
    public void A_table_holds_circles_lines_outlines_and_readings()
    {
        var walls = PortWallsCsv.Read(Table, "walls.csv").ValueOrThrow();

        Assert.Equal([3, null, 4], walls.KeepOuts.Select(each => each.Station));
        var drain = walls.KeepOuts[0].KeepOut;
        Assert.Equal(new KeepOut("oil drain", new KeepOutCircle(new(24, 6), 4), 0.3, 2.5, KeepOutSource.Drawing, "10 mm drill, from the drawing"), drain);
        var pocket = walls.KeepOuts[1].KeepOut;
        Assert.Equal([new(-12, 19), new(12, 19.5)], Assert.IsType<KeepOutLine>(pocket.Shape).Points);
        Assert.Equal((3.0, KeepOutSource.Measured), (pocket.LimitMm, pocket.Source));
        Assert.Equal(3, Assert.IsType<KeepOutOutline>(walls.KeepOuts[2].KeepOut.Shape).Outline.Count);
        Assert.Equal("said \"thin\" here", walls.KeepOuts[2].KeepOut.Note);
        Assert.Equal(new WallReading("roof", new(0, 15), new(3.4, 0.06), 2.5, "caliper"), walls.Readings.Single().Reading);
    }

    [Fact]
    public void What_was_written_reads_back_the_same()
    {
        var walls = PortWallsCsv.Read(Table, "walls.csv").ValueOrThrow();

        var text = PortWallsCsv.Write(walls);

        Assert.Equal(text, PortWallsCsv.Write(PortWallsCsv.Read(text, "again").ValueOrThrow()));
        Assert.Equal(7, text.Split('\n').Count(line => line.Contains("drain") || line.Contains("pocket") || line.Contains("jacket") || line.Contains("roof")));
    }

    [Fact]
    public void Inches_semicolons_and_decimal_commas_are_read()
    {
        var walls = PortWallsCsv.Read("name;kind;x_in;y_in;u_mm;radius_in\r\ndrain;circle;1;-0,5;0,3;0,125\r\n", "walls.csv").ValueOrThrow();

        // One inch is 25.4 mm exactly (NIST SP 811, appendix B).
        Assert.Equal(new KeepOutCircle(new(25.4, -12.7), 3.175), walls.KeepOuts.Single().KeepOut.Shape);
    }

    [Theory]
    [InlineData("", "walls-head", "is not known")]
    [InlineData("kind,name,x_mm,y_mm", "walls-head", "u_mm is missing")]
    [InlineData("kind,name,x_mm,y_mm,u_mm,x_in", "walls-head", "twice")]
    [InlineData("kind,name,x,y_mm,u_mm", "walls-head", "\"x\" is not known")]
    [InlineData("kind,name,x_mm,y_mm,u_mm\nhole,a,1,2,0.1", "walls-line", "Line 2: \"hole\" is not a kind")]
    [InlineData("kind,name,x_mm,y_mm,u_mm\n\ncircle,a,1,2,0.1", "walls-line", "Line 3: a circle needs its radius")]
    [InlineData("kind,name,x_mm,y_mm,u_mm\nreading,a,1,2,0.1", "walls-line", "the wall that was read")]
    [InlineData("kind,name,x_mm,y_mm,u_mm\nreading,a,1,2,", "walls-line", "no standard uncertainty")]
    [InlineData("kind,name,x_mm,y_mm,u_mm\nline,a,1,2,0.1", "walls-line", "fewer than two")]
    [InlineData("kind,name,x_mm,y_mm,u_mm\nline,a,NaN,2,0.1", "walls-line", "no length")]
    [InlineData("kind,name,x_mm,y_mm,u_mm\nline,a,1e9,2,0.1", "walls-line", "no length")]
    [InlineData("kind,name,station,x_mm,y_mm,u_mm\nline,a,-1,1,2,0.1", "walls-line", "no station number")]
    [InlineData("kind,name,x_mm,y_mm,u_mm\noutline,a,1,2,0.1\noutline,a,2,2,0.1", "outline-too-small", "encloses nothing")]
    [InlineData("kind,name,x_mm,y_mm,u_mm\noutline,a,0,0,0.1\noutline,a,2,2,0.1\noutline,a,2,0,0.1\noutline,a,0,2,0.1\noutline,a,-3,1,0.1", "outline-crosses-itself", "crosses itself")]
    public void A_table_that_cannot_be_used_is_refused_with_its_line(string text, string code, string said)
    {
        Assert.False(PortWallsCsv.Read(text, "walls.csv").TryGet(out _, out var problem));

        Assert.Equal(code, problem.Code);
        Assert.Contains(said, problem.What, StringComparison.Ordinal);
        Assert.StartsWith("walls.csv", problem.Where, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_puts_the_far_side_square_behind_its_place()
    {
        var port = SampleSections.Ellipse(40, 28, 720);
        var walls = PortWallsCsv.Read("kind,name,x_mm,y_mm,wall_mm,u_mm\nreading,roof,0.3,14.4,3.4,0.06", "walls.csv").ValueOrThrow();

        var farSide = walls.At(3, port).ValueOrThrow().Single();

        Assert.Equal(KeepOutSource.Caliper, farSide.Source);
        var place = Assert.IsType<KeepOutCircle>(farSide.Shape).Centre;

        // The ellipse's normal at x: its slope is -(14/20)²·x/y, so the far side leans by 3.4·(0.49·0.3/14) = 0.036 mm.
        Assert.Equal(17.4, place.YMm, 0.005);
        Assert.Equal(0.3 + 0.036, place.XMm, 0.02);
        Assert.Equal(3.4, LeastWall.Between(port, farSide.Shape).WallMm, 0.001);
    }

    [Fact]
    public void A_reading_far_off_the_outline_is_refused()
    {
        var walls = PortWallsCsv.Read("kind,name,x_mm,y_mm,wall_mm,u_mm\nreading,roof,0,17,3.4,0.06", "walls.csv").ValueOrThrow();

        Assert.False(walls.At(3, SampleSections.Ellipse(40, 28)).TryGet(out _, out var problem));
        Assert.Equal("reading-off-the-outline", problem.Code);
    }
}
