using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Ports;

namespace SectionScan.Jobs.Demo;

/// <summary>The invented job that the sample photographs show; sample-images/README.md tells it in full.</summary>
internal static class DemoScenario
{
    public const string Head = "Bramble 480 twin";

    /// <summary>What the check bars of the rendered targets read over what they should: printed true to size.</summary>
    public static readonly (double X, double Y) PrintRatio = (1, 1);

    public static readonly DemoPort Exemplar = new(
        "exemplar", "exemplar", ["p01.jpg", "p02.jpg"], 6, "exemplar",
        "Mould of the intake port with the good name, blue silicone, slices of 6 mm. The shape to work toward.", ["exemplar", "mould", "blue silicone"]);

    public static readonly DemoPort AsCast = new(
        "as cast", "as-cast", ["p04.jpg", "p05.jpg"], 6, "as cast",
        "The same port of another head before any work, slices of 6 mm.", ["as cast", "mould", "before"]);

    public static readonly DemoPort Finished = new(
        "finished", "finished", ["p06.jpg", "p07.jpg"], 5, "finished",
        "The port as cast after grinding, slices of 5 mm.", ["finished", "mould", "after"]);

    public static readonly DemoPort Sawn = new(
        "sawn casting", "sawn", ["p08.jpg"], null, "sawn", "A scrap head sawn open, the card on its face.", ["sawn", "opening"]);

    public static IReadOnlyList<DemoPort> Ports { get; } = [Exemplar, AsCast, Finished, Sawn];

    /// <summary>Where the stations lie, and the engine: invented, the same as in the job documents beside the sample photographs.</summary>
    public static readonly PortData PortData = new()
    {
        Kind = PortKind.Intake,
        Stations =
        [
            new(1, 4), new(2, 22), new(3, 50) { TurnDeg = 4 }, new(4, 64) { TurnDeg = 9 }, new(5, 78) { TurnDeg = 18 },
            new(6, 94) { TurnDeg = 34 }, new(7, 106) { TurnDeg = 52 }, new(8, 118) { TurnDeg = 68 },
        ],
        BowlFromStation = 8,
        Engine = new(92, 72.2, 2, 1500, 6500) { RodMm = 130, PeakTorqueRpm = 4000, PeakPowerRpm = 5500, AirTemperatureC = 20 },
        Valve = new(40, 7) { LiftMm = 10.5, SeatWidthMm = 1.5, SeatAngle = Angle.FromDegrees(45), ThroatMm = 34.8, GuideMm = 12 },
        MeanFlowCoefficient = 0.37,
    };

    public static IReadOnlyList<string> LensPhotos { get; } =
        ["c01.jpg", "c02.jpg", "c03.jpg", "c04.jpg", "c05.jpg", "c06.jpg", "c07.jpg", "c08.jpg", "c09.jpg", "c10.jpg"];
}
