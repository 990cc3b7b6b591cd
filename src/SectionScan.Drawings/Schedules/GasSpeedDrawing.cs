using System.Globalization;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Plots;
using SectionScan.Drawings.Sections;
using SectionScan.Porting.GasSpeeds;

namespace SectionScan.Drawings.Schedules;

/// <summary>Mean gas speed along a port as a plot.</summary>
public static class GasSpeedDrawing
{
    private const int MostSeries = 4;

    /// <summary>The speed at each station: at the engine speeds of most torque and power and at the ends of the range.</summary>
    /// <param name="speeds">The speeds.</param>
    /// <param name="hasInletLimits">True for an intake port: the usual ranges are shown too.</param>
    /// <param name="unit">What is shown; speeds go with it.</param>
    public static Page AlongPort(GasSpeedSchedule speeds, bool hasInletLimits, LengthUnit unit = LengthUnit.Millimetre)
    {
        ArgumentNullException.ThrowIfNull(speeds);
        var units = new ShownUnits(unit);
        var engine = speeds.Engine;
        var wanted = new[] { engine.PeakPowerRpm, engine.PeakTorqueRpm, engine.RpmTo, engine.RpmFrom }.OfType<double>().Distinct().Take(MostSeries).Order().Reverse().ToList();
        var bands = new List<PlotBand>();
        if (hasInletLimits && engine.PeakTorqueRpm is not null)
        {
            bands.Add(Band("usual near peak torque (common practice)", GasSpeedJudgements.NearPeakTorqueMPerS, units));
        }

        if (hasInletLimits && engine.PeakPowerRpm is not null)
        {
            bands.Add(Band("usual near peak power (common practice)", GasSpeedJudgements.NearPeakPowerMPerS, units));
        }

        return LinePlot.Build(
            new("Mean gas speed along the port", $"Distance along the centreline, {units.LengthName}", $"Mean speed, {units.SpeedName}")
            {
                IsFromZero = true,
                Bands = bands,
                Places = [.. speeds.Stations.Select(station => (units.FromMm(station.DistanceMm), station.Station.ToString(CultureInfo.InvariantCulture)))],
            },
            [.. wanted.Select(rpm => Series(speeds, rpm, units))]);
    }

    private static PlotSeries Series(GasSpeedSchedule speeds, double rpm, ShownUnits units)
    {
        var index = speeds.Rpms.ToList().IndexOf(rpm);
        var points = speeds.Stations.Select(station => new PlotPoint(
            units.FromMm(station.DistanceMm), units.FromMPerS(station.SpeedsMPerS[index].Value), units.FromMPerS(station.SpeedsMPerS[index].ExpandedUncertainty))).ToList();
        var engine = speeds.Engine;
        var mark = rpm == engine.PeakTorqueRpm ? ", peak torque" : rpm == engine.PeakPowerRpm ? ", peak power" : "";
        return new(string.Create(CultureInfo.InvariantCulture, $"{rpm:0} 1/min{mark}"), [.. points.Select(p => p with { ExpandedUncertainty = 0 })], points);
    }

    private static PlotBand Band(string label, (double From, double To) range, ShownUnits units) =>
        new(label, units.FromMPerS(range.From), units.FromMPerS(range.To));
}
