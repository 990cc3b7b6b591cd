using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Judgements;
using SectionScan.Porting.Schedules;
using SectionScan.Porting.Tests.Ports;

namespace SectionScan.Porting.Tests.Schedules;

public sealed class AreaScheduleTests
{
    private static readonly OutlineErrorSource Edge = new("edge, systematic", [new NormalOffsetEffect(0.02)]);

    [Fact]
    public void The_area_goes_through_every_station_and_hardly_beyond_them()
    {
        var schedule = AreaSchedule.Of(TestPorts.OfAreas((0, 1200), (20, 1150), (40, 1100), (60, 1120), (80, 1400)));

        Assert.Equal(1100, schedule.AreaMm2At(40).Value, 6);
        Assert.All(Enumerable.Range(0, 201), i => Assert.InRange(schedule.AreaMm2AtShare(i / 200.0).Value, 1097, 1400 + 1e-6));
        Assert.Equal(3, schedule.Least.Position.Station);
    }

    [Fact]
    public void Taper_is_the_change_for_ten_millimetres()
    {
        // From 1000 to 1100 mm² over 20 mm: 100 of a mean of 1050 is 9.5238 %, 4.7619 % for 10 mm.
        var interval = ScheduleTaper.Intervals(AreaSchedule.Of(TestPorts.OfAreas((0, 1000), (20, 1100))))[0];

        Assert.Equal(4.7619, interval.PercentPer10Mm.Value, 4);
        Assert.Equal(100, interval.AreaChangeMm2.Value, 6);
    }

    [Fact]
    public void The_cone_angle_is_that_of_circles_of_the_same_area() =>
        // Radius 10 to 11.4054 over 10 mm: half angle atan(0.14054) = 8.0001°.
        Assert.Equal(16.000, ScheduleTaper.Intervals(AreaSchedule.Of(TestPorts.Round((0, 10), (10, 11.4054))))[0].ConeAngle.Degrees, 3);

    [Fact]
    public void A_sudden_change_is_flagged_but_not_in_the_bowl()
    {
        var port = TestPorts.Round([Edge], (0, 18), (10, 18), (20, 17), (30, 17), (40, 20));

        var all = ScheduleTaper.Judge(AreaSchedule.Of(port));
        var runner = ScheduleTaper.Judge(AreaSchedule.Of(port with { BowlFromStation = 5 }));

        Assert.Equal(["area-narrows-suddenly", "area-widens-suddenly"], all.Select(j => j.Code));
        Assert.Equal(["area-narrows-suddenly"], runner.Select(j => j.Code));
        Assert.Equal(JudgementLevel.Outside, runner[0].Level);
        Assert.Contains("common practice, no source", runner[0].Basis, StringComparison.Ordinal);
    }

    [Fact]
    public void A_change_that_may_be_within_the_limit_is_only_worth_a_look()
    {
        var unsure = new OutlineErrorSource("edge, systematic", [new NormalOffsetEffect(0.3)]);

        var judgements = ScheduleTaper.Judge(AreaSchedule.Of(TestPorts.Round([unsure], (0, 18), (10, 17.5))));

        Assert.Equal(JudgementLevel.Look, Assert.Single(judgements).Level);
    }

    [Fact]
    public void Schedules_are_compared_over_the_stretch_that_both_have()
    {
        var reference = AreaSchedule.Of(TestPorts.OfAreas((0, 1000), (100, 1000)));
        var measured = AreaSchedule.Of(TestPorts.OfAreas((20, 1100), (60, 900), (120, 900)));

        var byDistance = ScheduleComparison.Of(reference, measured, ScheduleAxis.Distance).ValueOrThrow();

        Assert.Equal((20, 100), (byDistance.Samples[0].At, byDistance.Samples[^1].At));
        Assert.Equal(10, byDistance.Largest.DifferencePercent.Value, 4);
        Assert.Equal(-10, byDistance.Smallest.DifferencePercent.Value, 4);
    }

    [Fact]
    public void By_share_of_length_a_stretched_port_is_the_same_port()
    {
        var reference = AreaSchedule.Of(TestPorts.OfAreas((0, 1000), (40, 900), (100, 1200)));
        var stretched = AreaSchedule.Of(TestPorts.OfAreas((10, 1000), (58, 900), (130, 1200)));

        var comparison = ScheduleComparison.Of(reference, stretched, ScheduleAxis.Share).ValueOrThrow();

        Assert.All(comparison.Samples, sample => Assert.Equal(0, sample.DifferencePercent.Value, 6));
    }

    [Fact]
    public void Ports_without_a_common_stretch_cannot_be_compared_by_distance()
    {
        var reference = AreaSchedule.Of(TestPorts.OfAreas((0, 1000), (40, 900)));
        var measured = AreaSchedule.Of(TestPorts.OfAreas((50, 1000), (90, 900)));

        ScheduleComparison.Of(reference, measured, ScheduleAxis.Distance).TryGet(out _, out Problem? problem);

        Assert.Equal("schedules-apart", problem?.Code);
    }

    [Fact]
    public void A_burette_that_agrees_says_so_and_one_that_does_not_says_what_would_explain_it()
    {
        var volume = PortVolume.Of(AreaSchedule.Of(TestPorts.Round([Edge], (0, 20), (20, 20), (50, 20))));
        var trueMm3 = Math.PI * 400 * 50;

        var agrees = new BuretteCheck(volume, new(trueMm3, 300));
        var differs = new BuretteCheck(volume, new(0.9 * trueMm3, 300));

        Assert.True(agrees.Agrees);
        Assert.False(differs.Agrees);
        Assert.Equal(0.9, differs.DistanceFactor, 4);
        Assert.Equal(Math.Sqrt(0.9), differs.SectionScaleFactor, 4);
        Assert.Contains("all distances by −10.0 %, or all widths and heights by −5.1 %", differs.Judge().Consequence.ToString(), StringComparison.Ordinal);
    }
}
