using SectionScan.Cli.Options;
using SectionScan.Metrology.Frames;

namespace SectionScan.Cli.Tests.Options;

public sealed class ScaleOptionTests
{
    [Fact]
    public void Points_are_two_places_and_a_distance()
    {
        var points = PointsOption.Parse("210,1480,3350.5,1492,200").ValueOrThrow();

        Assert.Equal((new PixelPoint(210, 1480), new PixelPoint(3350.5, 1492), 200.0), (points.First, points.Second, points.DistanceMm));
    }

    [Fact]
    public void A_rectangle_is_four_corners_and_a_size()
    {
        Assert.Equal(
            [new(300, 210), new(3700, 240), new(3690, 2650), new(280, 2600)],
            RectangleOption.Parse("300,210,3700,240,3690,2650,280,2600").ValueOrThrow().Corners);
        var size = SizeOption.Parse("297x210").ValueOrThrow();
        Assert.Equal((297.0, 210.0), (size.WidthMm, size.HeightMm));
    }

    [Theory]
    [InlineData("--points", "1,2,3,4", "--points 210,1480,3350,1492,200")]
    [InlineData("--points", "1,2,3,4,0", "--points 210,1480,3350,1492,200")]
    [InlineData("--points", "1,2,3,4,NaN", "--points 210,1480,3350,1492,200")]
    [InlineData("--rectangle", "1,2,3", "--rectangle 300,210,3700,240,3690,2650,280,2600")]
    [InlineData("--size", "297*210", "--size 297x210")]
    [InlineData("--size", "297x-210", "--size 297x210")]
    public async Task A_wrong_value_is_wrong_usage_and_shows_a_right_one(string option, string value, string example)
    {
        var run = await CommandLine.RunAsync("digitise", "a.jpg", option, value);

        Assert.Equal(ExitCode.WrongUsage, run.ExitCode);
        Assert.Contains(example, run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("cannot be given together", "--checkerboard", "15", "--scan")]
    [InlineData("cannot be given together", "--points", "1,2,300,4,50", "--dpi", "300")]
    [InlineData("--pose-from needs --checkerboard", "--pose-from", "board.png")]
    [InlineData("belong together", "--size", "297x210")]
    [InlineData("belong together", "--rectangle", "1,2,300,2,300,200,1,200")]
    [InlineData("--checkerboard 0 is out of range", "--checkerboard", "0")]
    [InlineData("--dpi 10 is out of range", "--dpi", "10")]
    public async Task Options_that_do_not_fit_together_are_wrong_usage(string message, params string[] options)
    {
        var run = await CommandLine.RunAsync(["digitise", "a.jpg", .. options]);

        Assert.Equal(ExitCode.WrongUsage, run.ExitCode);
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
    }
}
