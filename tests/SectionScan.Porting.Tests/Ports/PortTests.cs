using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Ports;
using SectionScan.Porting.Schedules;
using SectionScan.Porting.Sections;
using SectionScan.Testing.Shapes;

namespace SectionScan.Porting.Tests.Ports;

public sealed class PortTests
{
    private static readonly StationTable Table = StationTable.From([new(1, 0), new(2, 20), new(3, 45)], "stations.csv").ValueOrThrow();

    [Fact]
    public void Sections_are_put_in_the_order_of_the_flow()
    {
        var port = Port.From("intake 1", PortKind.Intake, [Circle(3), Circle(1), Circle(2)], Table).ValueOrThrow();

        Assert.Equal([1, 2, 3], port.Stations.Select(station => station.Section.Station!.Value));
        Assert.Equal(45, port.LengthMm);
    }

    [Fact]
    public void A_station_without_a_section_is_named() =>
        Refused("station-without-section", "names station 2,", Circle(1), Circle(3));

    [Fact]
    public void A_section_that_the_table_does_not_know_is_named() =>
        Refused("station-not-in-table", "hold stations 7, 9,", Circle(1), Circle(2), Circle(3), Circle(9), Circle(7));

    [Fact]
    public void Two_sections_of_one_station_are_refused() =>
        Refused("section-twice", "carry station 2.", Circle(1), Circle(2), Circle(2), Circle(3));

    [Fact]
    public void A_section_without_a_station_is_refused() =>
        Refused("section-without-station", "One of the sections carries no station", Circle(1), Circle(null), Circle(3));

    [Fact]
    public void One_section_makes_no_port() => Refused("one-station-only", "Only station 1 is there", Circle(1));

    [Fact]
    public void Moulds_and_openings_do_not_mix() =>
        Refused("moulds-and-openings-mixed", "(stations 1, 3) and openings in metal (station 2)",
            Circle(1), TestPorts.Section(2, AnalyticShapes.Circle(15), SectionSubject.Opening), Circle(3));

    [Fact]
    public void A_target_shape_does_not_stand_among_measured_sections() =>
        Refused("targets-and-sections-mixed", "slices of a mould (stations 1, 3) and target shapes (station 2)",
            Circle(1), TestPorts.Section(2, AnalyticShapes.Circle(15), SectionSubject.Target), Circle(3));

    [Fact]
    public void A_leaning_cut_is_brought_back_to_square()
    {
        // Field guide: sawing askew by θ stretches the area by 1/cos θ; 10° is +1.543 %.
        var table = StationTable.From([new(1, 0), new(2, 20) { Tilt = Angle.FromDegrees(10) }], "t").ValueOrThrow();
        var port = Port.From("p", PortKind.Intake, [Circle(1), Circle(2)], table).ValueOrThrow();

        var schedule = AreaSchedule.Of(port);

        Assert.Equal(1.01543, schedule.Stations[0].AreaMm2.Value / schedule.Stations[1].AreaMm2.Value, 5);
        Assert.Equal(schedule.Stations[0].WidthMm.Value, schedule.Stations[1].WidthMm.Value, 9);
    }

    [Fact]
    public void The_tilt_of_the_cut_stands_in_the_budget()
    {
        OutlineErrorSource[] sources = [new("edge, systematic", [new NormalOffsetEffect(0.01)])];
        var table = StationTable.From([new(1, 0), new(2, 20) { Tilt = Angle.FromDegrees(30) }], "t").ValueOrThrow();
        var port = Port.From(
            "p", PortKind.Intake, [.. new[] { 1, 2 }.Select(i => TestPorts.Section(i, AnalyticShapes.Circle(15), SectionSubject.Mould, sources))], table).ValueOrThrow();

        var rows = AreaSchedule.Of(port).Stations.Select(s => s.Measured[MeasureCatalogue.Area].Budget.Rows.Single(row => row.Source == PortStation.TiltSource)).ToList();

        // tan 30° times 2°/√3 in radians is 1.164 % of the area; square on, half the square of the angle: 0.0203 %.
        Assert.Equal(0.01164, rows[1].StandardUncertainty / (Math.PI * 225 * Math.Cos(Math.PI / 6)), 4);
        Assert.Equal(0.000203, rows[0].StandardUncertainty / (Math.PI * 225), 6);
    }

    private static Section Circle(int? station) => TestPorts.Section(station, AnalyticShapes.Circle(15));

    private static void Refused(string code, string words, params Section[] sections)
    {
        Port.From("intake 1", PortKind.Intake, sections, Table).TryGet(out _, out Problem? problem);

        Assert.Equal(code, problem?.Code);
        Assert.Contains(words, problem!.What, StringComparison.Ordinal);
        Assert.Equal("intake 1", problem.Where);
        Assert.NotEmpty(problem.Remedy);
    }
}
