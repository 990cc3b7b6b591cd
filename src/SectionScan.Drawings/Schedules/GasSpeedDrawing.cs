using System.Globalization;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Plots;
using SectionScan.Porting.GasSpeeds;

namespace SectionScan.Drawings.Schedules;

/// <summary>Mean gas speed along a port as a plot.</summary>
public static class GasSpeedDrawing
{
    private const int MostSeries = 4;

    /// <summary>The speed at each station: at the engine speeds of most torque and power and at the ends of the range.</summary>
    /// <param name="speeds">The speeds.</param>
    /// <param name="hasInletLimits">True for an intake port: the usual ranges are shown too.</param>
    public static Page AlongPort(GasSpeedSchedule speeds, bool hasInletLimits)
    {
        ArgumentNullException.ThrowIfNull(speeds);
        var engine = speeds.Engine;
        var wanted = new[] { engine.PeakPowerRpm, engine.PeakTorqueRpm, engine.RpmTo, engine.RpmFrom }.OfType<double>().Distinct().Take(MostSeries).Order().Reverse().ToList();
        var bands = new List<PlotBand>();
        if (hasInletLimits && engine.PeakTorqueRpm is not null)
        {
            bands.Add(Band("usual near peak torque (common practice)", GasSpeedJudgements.NearPeakTorqueMPerS));
        }

        if (hasInletLimits && engine.PeakPowerRpm is not null)
        {
            bands.Add(Band("usual near peak power (common practice)", GasSpeedJudgements.NearPeakPowerMPerS));
        }

        return LinePlot.Build(
            new("Mean gas speed along the port", "Distance along the centreline, mm", "Mean speed, m/s")
            {
                IsFromZero = true,
                Bands = bands,
                Places = [.. speeds.Stations.Select(station => (station.DistanceMm, station.Station.ToString(CultureInfo.InvariantCulture)))],
            },
            [.. wanted.Select(rpm => Series(speeds, rpm))]);
    }

    private static PlotSeries Series(GasSpeedSchedule speeds, double rpm)
    {
        var index = speeds.Rpms.ToList().IndexOf(rpm);
        var points = speeds.Stations.Select(station => new PlotPoint(station.DistanceMm, station.SpeedsMPerS[index].Value, station.SpeedsMPerS[index].ExpandedUncertainty)).ToList();
        var engine = speeds.Engine;
        var mark = rpm == engine.PeakTorqueRpm ? ", peak torque" : rpm == engine.PeakPowerRpm ? ", peak power" : "";
        return new(string.Create(CultureInfo.InvariantCulture, $"{rpm:0} 1/min{mark}"), [.. points.Select(p => p with { ExpandedUncertainty = 0 })], points);
    }

    private static PlotBand Band(string label, (double From, double To) range) => new(label, range.From, range.To);
}
