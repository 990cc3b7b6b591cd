using System.Globalization;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Plots;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Schedules;

namespace SectionScan.Drawings.Schedules;

/// <summary>Area schedules as plots: what runs along a port, with its uncertainty.</summary>
public static class ScheduleDrawing
{
    private const int Samples = 160;

    /// <summary>The area of one or more ports along the centreline; bars and thin lines show U (k = 2).</summary>
    /// <param name="schedules">The port looked at first, then what it is compared with; at most four.</param>
    /// <param name="unit">What is shown.</param>
    public static Page Area(IReadOnlyList<AreaSchedule> schedules, LengthUnit unit = LengthUnit.Millimetre)
    {
        ArgumentNullException.ThrowIfNull(schedules);
        var units = new ShownUnits(unit);
        var frame = new PlotFrame("Area along the port", Along(units), $"Area, {units.AreaName}") { Places = Stations(schedules[0], units) };
        return LinePlot.Build(frame, [.. schedules.Select(schedule => new PlotSeries(
            schedule.Name,
            [.. Places(schedule).Select(at => AreaPoint(at, schedule.AreaMm2At(at), units))],
            [.. schedule.Stations.Select(station => AreaPoint(station.Position.DistanceMm, station.AreaMm2, units))]))]);
    }

    /// <summary>Width, height and hydraulic diameter of one port along the centreline.</summary>
    public static Page Sizes(AreaSchedule schedule, LengthUnit unit = LengthUnit.Millimetre)
    {
        ArgumentNullException.ThrowIfNull(schedule);
        var units = new ShownUnits(unit);
        return LinePlot.Build(
            new($"Width, height, hydraulic diameter: {schedule.Name}", Along(units), units.LengthName) { Places = Stations(schedule, units), HeightMm = 80 },
            [
                Measure("width", schedule, units, station => station.WidthMm),
                Measure("height", schedule, units, station => station.HeightMm),
                Measure("hydraulic diameter", schedule, units, station => station.HydraulicDiameterMm),
            ]);
    }

    /// <summary>How much larger or smaller a port is than its reference, in percent of area.</summary>
    public static Page Difference(ScheduleComparison comparison, LengthUnit unit = LengthUnit.Millimetre)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        var units = new ShownUnits(unit);
        double At(double at) => comparison.Axis == ScheduleAxis.Share ? at * 100 : units.FromMm(at);
        var isShare = comparison.Axis == ScheduleAxis.Share;
        return LinePlot.Build(
            new($"Area of {comparison.Measured} against {comparison.Reference}", isShare ? "Share of the length, %" : Along(units), "Difference, %") { HeightMm = 74 },
            [
                new($"{comparison.Measured}, with U (k = 2)", [.. comparison.Samples.Select(sample =>
                    Point(At(sample.At), sample.DifferencePercent))], []),
                new(comparison.Reference, [new(At(comparison.Samples[0].At), 0), new(At(comparison.Samples[^1].At), 0)], []),
            ]);
    }

    private static PlotSeries Measure(string name, AreaSchedule schedule, ShownUnits units, Func<ScheduleStation, Estimate> of)
    {
        var points = schedule.Stations.Select(station => LengthPoint(station.Position.DistanceMm, of(station), units)).ToList();
        return new(name, [.. points.Select(p => p with { ExpandedUncertainty = 0 })], points);
    }

    private static IEnumerable<double> Places(AreaSchedule schedule) =>
        Enumerable.Range(0, Samples + 1).Select(i => schedule.FromMm + (schedule.LengthMm * i / Samples));

    private static List<(double, string)> Stations(AreaSchedule schedule, ShownUnits units) =>
        [.. schedule.Stations.Select(station => (units.FromMm(station.Position.DistanceMm), station.Position.Station.ToString(CultureInfo.InvariantCulture)))];

    private static string Along(ShownUnits units) => $"Distance along the centreline, {units.LengthName}";

    private static PlotPoint AreaPoint(double atMm, Estimate mm2, ShownUnits units) =>
        new(units.FromMm(atMm), units.FromMm2(mm2.Value), units.FromMm2(mm2.ExpandedUncertainty));

    private static PlotPoint LengthPoint(double atMm, Estimate mm, ShownUnits units) =>
        new(units.FromMm(atMm), units.FromMm(mm.Value), units.FromMm(mm.ExpandedUncertainty));

    private static PlotPoint Point(double x, Estimate value) => new(x, value.Value, value.ExpandedUncertainty);
}
