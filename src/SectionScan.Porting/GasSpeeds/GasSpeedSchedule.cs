using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Engines;
using SectionScan.Porting.Schedules;

namespace SectionScan.Porting.GasSpeeds;

/// <summary>Mean gas speeds at every station over a range of engine speeds.</summary>
/// <param name="Engine">The engine.</param>
/// <param name="Rpms">The engine speeds, growing.</param>
/// <param name="Stations">One row for each station.</param>
public sealed record GasSpeedSchedule(EngineData Engine, IReadOnlyList<double> Rpms, IReadOnlyList<StationSpeeds> Stations)
{
    private const int Steps = 6;
    private const double RoundTo = 50;

    /// <summary>The station of least area: there the gas is fastest.</summary>
    public StationSpeeds Fastest => Stations.MaxBy(station => station.SpeedsMPerS[^1].Value)!;

    /// <summary>Speeds over the engine's range, and at its speeds of most torque and power.</summary>
    public static GasSpeedSchedule Of(AreaSchedule schedule, EngineData engine)
    {
        ArgumentNullException.ThrowIfNull(schedule);
        ArgumentNullException.ThrowIfNull(engine);
        var even = Enumerable.Range(0, Steps).Select(i =>
            i is 0 ? engine.RpmFrom
            : i is Steps - 1 ? engine.RpmTo
            : Math.Round((engine.RpmFrom + ((engine.RpmTo - engine.RpmFrom) * i / (Steps - 1))) / RoundTo) * RoundTo);
        var rpms = even.Concat(new[] { engine.PeakTorqueRpm, engine.PeakPowerRpm }.OfType<double>()).Distinct().Order().ToList();
        return new(engine, rpms, [.. schedule.Stations.Select(station => new StationSpeeds(
            station.Position.Station, station.Position.DistanceMm, station.AreaMm2, [.. rpms.Select(rpm => SpeedMPerS(engine, station.AreaMm2, rpm))]))]);
    }

    /// <summary>The mean speed in an area, with the area's uncertainty.</summary>
    public static Estimate SpeedMPerS(EngineData engine, Estimate areaMm2, double rpm)
    {
        var speed = PortGasSpeed.MeanMPerS(engine, areaMm2.Value, rpm);
        return new(speed, speed * areaMm2.StandardUncertainty / areaMm2.Value);
    }
}

/// <summary>The speeds at one station.</summary>
/// <param name="Station">The station.</param>
/// <param name="DistanceMm">Its place, mm.</param>
/// <param name="AreaMm2">Its area.</param>
/// <param name="SpeedsMPerS">A speed for each engine speed.</param>
public sealed record StationSpeeds(int Station, double DistanceMm, Estimate AreaMm2, IReadOnlyList<Estimate> SpeedsMPerS);
