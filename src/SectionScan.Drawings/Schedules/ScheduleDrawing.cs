using System.Globalization;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Plots;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Schedules;

namespace SectionScan.Drawings.Schedules;

/// <summary>Area schedules as plots: what runs along a port, with its uncertainty.</summary>
public static class ScheduleDrawing
{
    private const int Samples = 160;
    private const string Along = "Distance along the centreline, mm";

    /// <summary>The area of one or more ports along the centreline; bars and thin lines show U (k = 2).</summary>
    /// <param name="schedules">The port looked at first, then what it is compared with; at most four.</param>
    public static Page Area(IReadOnlyList<AreaSchedule> schedules)
    {
        ArgumentNullException.ThrowIfNull(schedules);
        var frame = new PlotFrame("Area along the port", Along, "Area, mm²") { Places = Stations(schedules[0]) };
        return LinePlot.Build(frame, [.. schedules.Select(schedule => new PlotSeries(
            schedule.Name,
            [.. Places(schedule).Select(at => Point(at, schedule.AreaMm2At(at)))],
            [.. schedule.Stations.Select(station => Point(station.Position.DistanceMm, station.AreaMm2))]))]);
    }

    /// <summary>Width, height and hydraulic diameter of one port along the centreline.</summary>
    public static Page Sizes(AreaSchedule schedule)
    {
        ArgumentNullException.ThrowIfNull(schedule);
        return LinePlot.Build(
            new($"Width, height, hydraulic diameter: {schedule.Name}", Along, "mm") { Places = Stations(schedule), HeightMm = 80 },
            [
                Measure("width", schedule, station => station.WidthMm),
                Measure("height", schedule, station => station.HeightMm),
                Measure("hydraulic diameter", schedule, station => station.HydraulicDiameterMm),
            ]);
    }

    /// <summary>How much larger or smaller a port is than its reference, in percent of area.</summary>
    public static Page Difference(ScheduleComparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        var isShare = comparison.Axis == ScheduleAxis.Share;
        return LinePlot.Build(
            new($"Area of {comparison.Measured} against {comparison.Reference}", isShare ? "Share of the length, %" : Along, "Difference, %") { HeightMm = 74 },
            [
                new($"{comparison.Measured}, with U (k = 2)", [.. comparison.Samples.Select(sample =>
                    Point(sample.At * (isShare ? 100 : 1), sample.DifferencePercent))], []),
                new(comparison.Reference, [new(comparison.Samples[0].At * (isShare ? 100 : 1), 0), new(comparison.Samples[^1].At * (isShare ? 100 : 1), 0)], []),
            ]);
    }

    private static PlotSeries Measure(string name, AreaSchedule schedule, Func<ScheduleStation, Estimate> of)
    {
        var points = schedule.Stations.Select(station => Point(station.Position.DistanceMm, of(station))).ToList();
        return new(name, [.. points.Select(p => p with { ExpandedUncertainty = 0 })], points);
    }

    private static IEnumerable<double> Places(AreaSchedule schedule) =>
        Enumerable.Range(0, Samples + 1).Select(i => schedule.FromMm + (schedule.LengthMm * i / Samples));

    private static List<(double, string)> Stations(AreaSchedule schedule) =>
        [.. schedule.Stations.Select(station => (station.Position.DistanceMm, station.Position.Station.ToString(CultureInfo.InvariantCulture)))];

    private static PlotPoint Point(double x, Estimate value) => new(x, value.Value, value.ExpandedUncertainty);
}
