using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Ports;
using SectionScan.Porting.Sections;
using SectionScan.Testing.Shapes;

namespace SectionScan.Porting.Tests.Ports;

/// <summary>Ports of round sections.</summary>
internal static class TestPorts
{
    public static Section Section(int? station, Outline outline, SectionSubject subject = SectionSubject.Mould, params OutlineErrorSource[] sources) =>
        new(station, subject, subject == SectionSubject.Mould ? 6 : 0, outline, sources, []);

    /// <summary>Circles of given radii at given distances, stations from 1.</summary>
    public static Port Round(params (double DistanceMm, double RadiusMm)[] circles) => Round([], circles);

    public static Port Round(OutlineErrorSource[] sources, params (double DistanceMm, double RadiusMm)[] circles)
    {
        var sections = circles.Select((circle, i) => Section(i + 1, AnalyticShapes.Circle(circle.RadiusMm), SectionSubject.Mould, sources)).ToList();
        var table = StationTable.From(circles.Select((circle, i) => new StationPosition(i + 1, circle.DistanceMm)), "test").ValueOrThrow();
        return Port.From("test port", PortKind.Intake, sections, table).ValueOrThrow();
    }

    /// <summary>Areas in mm² at given distances.</summary>
    public static Port OfAreas(params (double DistanceMm, double AreaMm2)[] areas) =>
        Round([.. areas.Select(each => (each.DistanceMm, Math.Sqrt(each.AreaMm2 / Math.PI / (1 - AnalyticShapes.InscribedAreaError))))]);
}
