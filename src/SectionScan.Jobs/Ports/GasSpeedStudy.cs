using System.Globalization;
using System.Text;
using SectionScan.Drawings.Schedules;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Engines;
using SectionScan.Porting.GasSpeeds;
using SectionScan.Porting.Judgements;
using SectionScan.Porting.Ports;
using SectionScan.Porting.Schedules;

namespace SectionScan.Jobs.Ports;

/// <summary>Gas speeds of one port in one engine.</summary>
/// <param name="Port">The port.</param>
/// <param name="Engine">The engine.</param>
/// <param name="Valve">The valve, or null.</param>
/// <param name="FlowCoefficient">Mean flow coefficient of the valve, or null.</param>
/// <param name="Flow">Figures of a flow bench.</param>
/// <param name="Speeds">Mean speeds at every station over the range of engine speeds.</param>
/// <param name="Judgements">Too large, too small, and where breathing suffers.</param>
public sealed record GasSpeedStudy(
    Port Port, EngineData Engine, ValveData? Valve, double? FlowCoefficient, IReadOnlyList<JobFlow> Flow, GasSpeedSchedule Speeds,
    IReadOnlyList<Judgement> Judgements)
{
    /// <summary>Shares of the valve's diameter at which the areas of the curtain are told.</summary>
    private static readonly double[] LiftShares = [0.05, 0.1, 0.15, 0.2, 0.25, 0.3];

    /// <summary>The index's range for an intake port with a valve: engine speeds at 0.5 and 0.6; else null.</summary>
    public (double FallsFrom, double SteeplyFrom)? BreathingRpm => Valve is null || Port.Kind == PortKind.Exhaust ? null : (
        InletMachIndex.RpmAt(Engine, Valve, Coefficient, InletMachIndex.FallsFrom),
        InletMachIndex.RpmAt(Engine, Valve, Coefficient, InletMachIndex.FallsSteeplyFrom));

    /// <summary>The flow coefficient used.</summary>
    public double Coefficient => FlowCoefficient ?? InletMachIndex.AssumedFlowCoefficient;

    /// <summary>Lifts at which areas at the valve are told, mm: shares of the diameter up to the largest lift, and that.</summary>
    public IReadOnlyList<double> LiftsMm => Valve is null
        ? []
        : [.. LiftShares.Select(share => Math.Round(share * Valve.DiameterMm, 1)).Where(lift => lift < (Valve.LiftMm ?? double.MaxValue))
            .Concat(Valve.LiftMm is { } most ? [most] : [])];

    /// <summary>Studies a port.</summary>
    /// <param name="schedule">Its schedule.</param>
    /// <param name="port">The port.</param>
    /// <param name="engine">The engine; checked here.</param>
    /// <param name="valve">The valve, or null; checked here.</param>
    /// <param name="flowCoefficient">Mean flow coefficient, or null.</param>
    /// <param name="flow">Figures of a flow bench.</param>
    /// <param name="where">Where the engine's data come from, for messages.</param>
    public static Result<GasSpeedStudy> Of(
        AreaSchedule schedule, Port port, EngineData engine, ValveData? valve, double? flowCoefficient, IReadOnlyList<JobFlow> flow, string where)
    {
        ArgumentNullException.ThrowIfNull(port);
        ArgumentNullException.ThrowIfNull(engine);
        if (!EngineRules.Check(engine, where).TryGet(out _, out var problem)
            || (valve is not null && !EngineRules.Check(valve, engine.BoreMm, where).TryGet(out _, out problem)))
        {
            return problem;
        }

        return new GasSpeedStudy(
            port, engine, valve, flowCoefficient, flow, GasSpeedSchedule.Of(schedule, engine),
            GasSpeedJudgements.Of(schedule, port.Kind, engine, valve, flowCoefficient));
    }

    /// <summary>Writes the plot (SVG, PDF) and the table (CSV).</summary>
    /// <param name="folder">Where to.</param>
    /// <param name="unit">What the plot shows; the table is in mm and m/s.</param>
    public Result<IReadOnlyList<string>> Write(string folder, LengthUnit unit = LengthUnit.Millimetre) => ScheduleFiles.WriteAll(
        folder, $"{Files.FileNames.Safe(Port.Name)}.gas-speed", [GasSpeedDrawing.AlongPort(Speeds, Port.Kind == PortKind.Intake, unit)], ToCsv());

    /// <summary>The speeds as a table of commas, m/s; one line a station, one column an engine speed.</summary>
    public string ToCsv()
    {
        var text = new StringBuilder("station,distance_mm,area_mm2");
        foreach (var rpm in Speeds.Rpms)
        {
            text.Append(CultureInfo.InvariantCulture, $",speed_m_per_s_at_{rpm:0}_rpm");
        }

        foreach (var station in Speeds.Stations)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n{station.Station},{station.DistanceMm},{station.AreaMm2.Value:0.0000}");
            foreach (var speed in station.SpeedsMPerS)
            {
                text.Append(CultureInfo.InvariantCulture, $",{speed.Value:0.000}");
            }
        }

        return text.Append('\n').ToString();
    }
}
