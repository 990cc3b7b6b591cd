using System.Globalization;
using System.Text.Json;
using SectionScan.Testing.Truth;
using SectionScan.Testing.Witnesses;

namespace SectionScan.Cli.Tests.Commands.Cutting;

/// <summary>From the rendered photos of the port as cast (p04) and of the exemplar (p01) to a plan, against the true polygons by shapely.</summary>
public sealed class CutPlanOfPhotosTests : IDisposable
{
    private readonly PhotoFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task The_metal_between_port_and_exemplar_is_that_of_the_truth()
    {
        foreach (var photo in new[] { "p04", "p01" })
        {
            var run = await CommandLine.RunAsync("digitise", SamplePhotos.PhotoPath(photo), "--thickness", "6", "--print-ratio", "1,1", "--out", folder.PathOf(photo));
            Assert.Equal(ExitCode.Done, run.ExitCode);
        }

        var plan = await CommandLine.RunAsync("cut-plan", folder.PathOf("p04"), folder.PathOf("p01"), "--align", "best-fit-turned", "--out", folder.Out, "--json");

        Assert.Equal(ExitCode.Done, plan.ExitCode);
        using var answer = JsonDocument.Parse(plan.Output);
        var stations = answer.RootElement.GetProperty("stations").EnumerateArray().ToList();
        Assert.Equal([1, 2, 3, 4], stations.Select(station => station.GetProperty("station").GetInt32()));
        foreach (var station in stations)
        {
            var number = station.GetProperty("station").GetInt32();
            var (atFinish, now) = TrueMetalMm2(number);

            // The depth's own U, round a perimeter of at most 130 mm.
            var within = 130 * station.GetProperty("depthExpandedUncertaintyMm").GetDouble();
            Assert.InRange(within, 1, 80);
            Assert.Equal(atFinish, station.GetProperty("atFinishMm2").GetDouble(), within);
            Assert.Equal(now, station.GetProperty("nowMm2").GetDouble(), within);
        }
    }

    private static (double AtFinishMm2, double NowMm2) TrueMetalMm2(int station)
    {
        static string Text(string photo, int station)
        {
            var section = SamplePhotos.TruthOf(photo).Sections.Single(each => each.Station == station);
            return string.Join(' ', section.Outline.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.XMm:R},{p.YMm:R}")));
        }

        var areas = DebianPython.Run(
            """
            import sys
            from shapely.geometry import Polygon
            from shapely.affinity import translate
            def read(text):
                shape = Polygon([tuple(map(float, p.split(','))) for p in text.split()])
                return translate(shape, -shape.centroid.x, -shape.centroid.y)
            own, wanted = read(sys.argv[1]), read(sys.argv[2])
            print(repr(wanted.difference(own).area), repr(wanted.buffer(-0.8, 64).difference(own).area))
            """,
            Text("p04", station), Text("p01", station)).Split(' ').Select(number => double.Parse(number, CultureInfo.InvariantCulture)).ToArray();
        return (areas[0], areas[1]);
    }
}
