using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Schedules;
using SectionScan.Porting.Tests.Ports;
using SectionScan.Testing.Shapes;

namespace SectionScan.Porting.Tests.Schedules;

public sealed class PortVolumeTests
{
    [Fact]
    public void A_cone_frustum_has_the_volume_of_the_handbook()
    {
        // Field guide 3.6: R 20 → 16, h 30: 9760π = 30661.944299 mm³ (h/3·(A1 + A2 + √(A1A2)), mensuration handbooks).
        var volume = Volume((0, 20), (10, 20 - (4 / 3.0)), (30, 16));

        Assert.Equal(1, volume / (30661.944299 * (1 - AnalyticShapes.InscribedAreaError)), 9);
        Assert.Equal(30661.944299, PortVolume.Frustum(30, 400 * Math.PI, 256 * Math.PI), 5);
    }

    [Fact]
    public void Two_stations_of_a_cone_are_enough() =>
        Assert.Equal(1, Volume((0, 20), (30, 16)) / (30661.944299 * (1 - AnalyticShapes.InscribedAreaError)), 9);

    [Fact]
    public void A_torus_sector_has_the_volume_after_Pappus() =>
        // Field guide 3.6: r 18 on a bend of radius 45 through 90°: 71949.4160839 mm³.
        Assert.Equal(1, Volume((0, 18), (20, 18), (40, 18), (45 * Math.PI / 2, 18)) / (71949.4160839 * (1 - AnalyticShapes.InscribedAreaError)), 9);

    [Fact]
    public void An_uneven_run_lies_near_Simpsons_and_the_frusta()
    {
        // Field guide 3.6: 1200, 1150, 1100, 1120, 1180 mm² every 20 mm: Simpson 91066.6667, frusta 91193.4652 mm³.
        var volume = PortVolume.Of(AreaSchedule.Of(TestPorts.OfAreas((0, 1200), (20, 1150), (40, 1100), (60, 1120), (80, 1180))));

        Assert.InRange(volume.VolumeMm3.Value / 91066.6667, 0.998, 1.002);
        Assert.InRange(Math.Abs(volume.VolumeMm3.Value - 91193.4652), 0, 2 * volume.VolumeMm3.ExpandedUncertainty);
        Assert.Contains(volume.Budget.Rows, row => row is { Source: "shape between stations", StandardUncertainty: > 0 });
    }

    [Fact]
    public void A_common_scale_error_does_not_average_out()
    {
        // 0.1 % of every length in the sections is 0.2 % of the volume, however many stations there are.
        var port = TestPorts.Round([new("print scale", [LinearEffect.Scale(0.001)])], (0, 20), (10, 20), (20, 20), (30, 20), (40, 20));
        var volume = PortVolume.Of(AreaSchedule.Of(port));

        var scale = volume.Budget.Rows.Single(row => row.Source == "print scale");

        Assert.Equal(0.002, scale.StandardUncertainty / volume.VolumeMm3.Value, 5);
    }

    [Fact]
    public void Noise_of_single_sections_averages_out()
    {
        var noise = new OutlineErrorSource("edge, unsteady stretches", [new LocalOffsetEffect(0.5, 20, 0, 8)]);
        var schedule = AreaSchedule.Of(TestPorts.Round([noise], (0, 20), (10, 20), (20, 20), (30, 20), (40, 20)));

        var row = PortVolume.Of(schedule).Budget.Rows.Single(each => each.Source == noise.Name);

        // Weights 5, 10, 10, 10, 5 mm, added in squares: √350 mm times one section's u.
        Assert.Equal(Math.Sqrt(350) * schedule.Stations[0].AreaMm2.StandardUncertainty, row.StandardUncertainty, 1.0);
    }

    [Fact]
    public void End_sections_are_carried_on_to_face_and_seat()
    {
        var schedule = AreaSchedule.Of(TestPorts.Round((5, 10), (25, 10)));

        var volume = PortVolume.Of(schedule, 0, 30);

        Assert.Equal(1000 * Math.PI, volume.BeyondStationsMm3, 0.1);
        Assert.Equal(3000 * Math.PI, volume.VolumeMm3.Value, 0.2);
    }

    private static double Volume(params (double DistanceMm, double RadiusMm)[] circles) =>
        PortVolume.Of(AreaSchedule.Of(TestPorts.Round(circles))).VolumeMm3.Value;
}
