using System.Globalization;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Cutting;
using SectionScan.Porting.Ports;
using SectionScan.Porting.Walls;
using SectionScan.Testing.Sections;
using SectionScan.Testing.Witnesses;

namespace SectionScan.Porting.Tests.Cutting;

public class StationCutTests
{
    private const double PolygonMm = 0.002;
    private const double PolygonMm2 = 0.05;

    [Fact]
    public void A_round_port_opened_by_two_millimetres_is_roughed_by_what_the_allowance_leaves()
    {
        var cut = Plan(SampleSections.Ellipse(30, 30, 720), SampleSections.Ellipse(34, 34, 720));

        Assert.All(cut.Places, place =>
        {
            Assert.Equal(2, place.AtFinishMm, PolygonMm);
            Assert.Equal(1.2, place.NowMm, PolygonMm);
            Assert.Equal(CutMark.Rough, place.Mark);
        });
        Assert.Equal(Math.PI * ((17 * 17) - (15 * 15)), cut.AtFinishMm2, PolygonMm2);
        Assert.Equal(Math.PI * ((16.2 * 16.2) - (15 * 15)), cut.NowMm2, PolygonMm2);
        Assert.Equal(0, cut.BeyondMm2, 1e-6);
        Assert.Equal(8, cut.Sectors.Count);
        Assert.All(cut.Sectors, sector => Assert.Equal(cut.AtFinishMm2 / 8, sector.AtFinishMm2, 0.02));
        Assert.Equal(cut.Halves.LeftMm2, cut.Halves.RightMm2, 0.02);
        Assert.True(cut.Halves.IsTargetSymmetric);
    }

    [Fact]
    public void Nothing_comes_off_where_the_wall_is_on_the_target_or_beyond_it()
    {
        // The port stands 1 mm to the right of a target of its own size.
        var cut = Plan(SampleSections.Ellipse(30, 30, 720).Moved(1, 0), SampleSections.Ellipse(30, 30, 720), u: 0.05);

        CutMark At(OutlineRegion region) => cut.Places.Where(place => place.Region == region).MinBy(place => Math.Abs(place.AtFinishMm))!.Mark;
        Assert.Equal(CutMark.Beyond, cut.Places.MinBy(place => place.AtFinishMm)!.Mark);
        Assert.Equal(CutMark.Leave, At(OutlineRegion.Roof));
        Assert.Equal(CutMark.Leave, At(OutlineRegion.Floor));
        Assert.Equal(CutMark.Rough, cut.Places.MaxBy(place => place.AtFinishMm)!.Mark);
        Assert.Equal(1, cut.Sectors.Single(sector => sector.Region == OutlineRegion.Right).ShareToLeave);
        Assert.Equal(0, cut.Sectors.Single(sector => sector.Region == OutlineRegion.Left).ShareToLeave);
        Assert.Equal(cut.AtFinishMm2, cut.BeyondMm2, 0.01);

        // The crescent's tips reach to x = 0.5: two slivers of 0.5 · (15 - √(225 - 1)) / 2 together 0.0167 mm².
        Assert.Equal(0.0167, cut.Halves.RightMm2, 0.005);
    }

    [Fact]
    public void Less_than_the_allowance_is_finished_only()
    {
        var cut = Plan(SampleSections.Ellipse(30, 30, 720), SampleSections.Ellipse(31, 31, 720));

        Assert.All(cut.Places, place => Assert.Equal((CutMark.FinishOnly, 0.0), (place.Mark, place.NowMm)));
        Assert.Equal(0, cut.NowMm2, 1e-6);
    }

    [Fact]
    public void A_wall_that_surely_stands_short_is_roughed_however_badly_the_depth_is_known()
    {
        // 1.1 mm to the target, good to ±0.4 mm: 0.3 mm to rough, less than U of the depth; the 0.8 mm left for finishing cover what is not known.
        var cut = Plan(SampleSections.Ellipse(30, 30, 720), SampleSections.Ellipse(32.2, 32.2, 720), u: 0.2);

        Assert.All(cut.Places, place => Assert.Equal(CutMark.Rough, place.Mark));
        Assert.All(cut.Sectors, sector => Assert.Equal(0.3, sector.MostNowMm, PolygonMm));
        Assert.Equal(Math.PI * ((15.3 * 15.3) - (15 * 15)), cut.NowMm2, PolygonMm2);
    }

    [Fact]
    public void What_no_hand_can_cut_on_purpose_is_nowhere_counted_as_roughing()
    {
        // 0.03 mm more than the allowance all round: 2.8 mm² of metal that nobody could rough off.
        var cut = Plan(SampleSections.Ellipse(30, 30, 720), SampleSections.Ellipse(31.66, 31.66, 720));

        Assert.All(cut.Places, place => Assert.Equal((CutMark.FinishOnly, 0.0), (place.Mark, place.NowMm)));
        Assert.Equal(0, cut.NowMm2);
        Assert.All(cut.Sectors, sector => Assert.Equal((0.0, 0.0), (sector.MostNowMm, sector.NowMm2)));
        Assert.True(cut.MetalNow.IsEmpty);
    }

    [Fact]
    public void Nothing_comes_off_before_a_thin_wall_is_measured()
    {
        var (present, target) = (SampleSections.Ellipse(30, 30, 720), SampleSections.Ellipse(34, 34, 720));
        var drain = new KeepOut("oil drain", new KeepOutCircle(new(23, 0), 4), 0.1, 2.5, KeepOutSource.Measured, string.Empty);
        var wall = RemainingWall.Of(target, WallStage.Target, drain, present, [], [], WallAssumptions.Usual);

        var cut = Plan(present, target, walls: [wall]);

        Assert.Equal(2, wall.WallMm.Value, PolygonMm);
        Assert.Equal(CutMark.ThinWall, cut.Places.MinBy(place => Math.Abs(place.Direction.Degrees))!.Mark);
        Assert.Equal(CutMark.Rough, cut.Places.MaxBy(place => Math.Abs(place.Direction.Degrees))!.Mark);

        // The ring between 15 and 16.2 mm, less the part that lies before the thin wall: half a place's step (0.25 mm of 107 mm) is not told.
        var before = cut.Places.Count(place => place.Mark == CutMark.ThinWall) / (double)cut.Places.Count;
        var ring = Math.PI * ((16.2 * 16.2) - (15 * 15));
        Assert.InRange(before, 0.05, 0.4);
        Assert.Equal(ring * (1 - before), cut.NowMm2, 0.01 * ring);
        Assert.All(cut.Places.Where(place => place.Mark == CutMark.ThinWall), place => Assert.Equal((0, 2), (place.NowMm, Math.Round(place.AtFinishMm, 2))));
    }

    [Theory]
    [InlineData(1, 11)]
    [InlineData(2, 12)]
    [InlineData(3, 13)]
    public void Metal_depths_and_rough_line_are_what_shapely_finds(int present, int target)
    {
        var (own, wanted) = (SampleSections.Blob(present, 360), SampleSections.Blob(target, 360).Scaled(1.15));

        var cut = Plan(own, wanted);

        var shapely = DebianPython.Run(
            """
            import sys
            from shapely.geometry import Polygon, Point
            read = lambda text: Polygon([tuple(map(float, p.split(','))) for p in text.split()])
            own, target = read(sys.argv[1]), read(sys.argv[2])
            rough = target.buffer(-0.8, 64)
            print(repr(target.difference(own).area), repr(rough.difference(own).area), repr(own.difference(target).area), repr(rough.area))
            """,
            Text(own), Text(wanted)).Split(' ').Select(number => double.Parse(number, CultureInfo.InvariantCulture)).ToArray();
        Assert.Equal(shapely[0], cut.AtFinishMm2, 1e-6);
        Assert.Equal(shapely[1], cut.NowMm2, 0.01);
        Assert.Equal(shapely[2], cut.BeyondMm2, 1e-6);
        Assert.Equal(shapely[3], PolygonMoments.Of(cut.Rough.Points).AreaMm2, 0.01);
        Assert.Equal(cut.AtFinishMm2, cut.Sectors.Sum(sector => sector.AtFinishMm2), 1e-6);
        Assert.Equal(cut.AtFinishMm2, cut.Halves.LeftMm2 + cut.Halves.RightMm2, 1e-6);
    }

    [Fact]
    public void Metal_from_station_to_station_is_the_mean_of_both_areas()
    {
        // Trapezoidal rule by hand: 20 · (1200/2 + 1150 + 1100 + 1120 + 1180/2) = 91 200 mm³.
        Assert.Equal(91_200, CutVolume.Between([1200, 1150, 1100, 1120, 1180], 20), 1e-9);
        Assert.Equal(0, CutVolume.Between([1200], 20));
    }

    [Fact]
    public void Metal_along_the_centreline_is_the_integral_of_its_area()
    {
        // Areas that grow with the square of the distance: s³/3, 576 mm³ to 12 mm (the trapezoidal rule gives 612). A tilt of 60° halves them.
        StationPosition[] at = [new(1, 0), new(2, 3), new(3, 7), new(4, 12)];
        double[] areas = [0, 9, 49, 144];

        Assert.Equal(576, CutVolume.Along(areas, at), 1e-9);
        Assert.Equal(288, CutVolume.Along(areas, [.. at.Select(each => each with { Tilt = Angle.FromDegrees(60) })]), 1e-9);
        Assert.Equal(0, CutVolume.Along([5], [new(1, 4)]));

        // Metal at one end only: the curve must not dip under none where there is nothing to cut.
        Assert.InRange(CutVolume.Along([90, 0, 0, 0], at), 0, 90 * 3);
    }

    private static StationCut Plan(Outline present, Outline target, double u = 0, IReadOnlyList<RemainingWall>? walls = null) =>
        StationCut.Plan(present, target, 0.8, u, walls ?? [], "station 3").ValueOrThrow();

    private static string Text(Outline outline) =>
        string.Join(' ', outline.Points.ToArray().Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.XMm:R},{p.YMm:R}")));
}
