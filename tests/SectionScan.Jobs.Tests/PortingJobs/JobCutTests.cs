using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Walls;
using SectionScan.Testing.Sections;

namespace SectionScan.Jobs.Tests.PortingJobs;

/// <summary>Circles of 40 mm toward circles of 42 mm, cut in full: the same ring of metal at every station.</summary>
public class JobCutTests
{
    private const double RingMm2 = Math.PI * ((21 * 21) - (20 * 20));

    // Stations 2 and 4 lie 48 mm apart, though the port's stations are 24 mm apart.
    [Fact]
    public void The_metal_is_counted_over_the_way_between_the_stations_that_are_cut()
    {
        var plan = Plan([2, 4], [1, 2, 3, 4]);

        Assert.Equal(48 * RingMm2, plan.AtFinishMm3!.Value, 0.01 * 48 * RingMm2);
    }

    [Fact]
    public void Without_the_place_of_every_station_no_volume_is_told() => Assert.Null(Plan([2, 4], [1, 2, 3]).AtFinishMm3);

    private static Jobs.Cutting.CutPlan Plan(int[] cut, int[] placed)
    {
        var ports = new JobTarget([.. cut.Select(station => (Circle(40, station), Circle(42, station)))], [], PortWalls.None);
        var targets = cut.Select((_, at) => ports.Settle(at, new TargetSettings { FairingMm = 0 }, "test").ValueOrThrow()).ToList();
        var job = new PortingJob { Name = "job", PortData = new() { Stations = [.. placed.Select(station => new JobStation(station, 24 * (station - 1)))] } };
        return JobCut.Plan(job, ports, targets, isInch: false).ValueOrThrow();
    }

    private static SectionInput Circle(double diameterMm, int station) => SectionInput.Of(
        "circle", SectionDocumentFormat.Read(SampleSections.Document(SampleSections.Ellipse(diameterMm, diameterMm), station), "circle").ValueOrThrow());
}
