using SectionScan.Porting.GasSpeeds;

namespace SectionScan.Jobs.Ports;

/// <summary>Gas speeds as one document for programs: m/s, mm, mm², 1/min.</summary>
/// <param name="Schema">Its schema's name.</param>
/// <param name="Port">The port's name.</param>
/// <param name="Rpms">The engine speeds.</param>
/// <param name="MeanPistonSpeedsMPerS">Mean piston speed at each.</param>
/// <param name="Stations">Speeds at each station.</param>
/// <param name="Valve">Areas at the valve by lift.</param>
/// <param name="MachIndex">Taylor's inlet Mach index, or null.</param>
/// <param name="Bench">Speeds on the flow bench.</param>
/// <param name="Judgements">What was found.</param>
public sealed record GasSpeedAnswer(
    string Schema, string Port, IReadOnlyList<double> Rpms, IReadOnlyList<double> MeanPistonSpeedsMPerS,
    IReadOnlyList<GasSpeedAnswer.StationPart> Stations, IReadOnlyList<GasSpeedAnswer.LiftPart> Valve, GasSpeedAnswer.IndexPart? MachIndex,
    IReadOnlyList<GasSpeedAnswer.BenchPart> Bench, IReadOnlyList<ScheduleAnswer.JudgementPart> Judgements)
{
    /// <summary>The schema's name.</summary>
    public const string SchemaName = "sectionscan/gas-speed/1";

    /// <summary>Makes the answer.</summary>
    public static GasSpeedAnswer Of(GasSpeedStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        var least = study.Speeds.Fastest;
        return new(
            SchemaName, study.Port.Name, study.Speeds.Rpms, [.. study.Speeds.Rpms.Select(rpm => PistonMotion.MeanSpeedMPerS(study.Engine.StrokeMm, rpm))],
            [.. study.Speeds.Stations.Select(s => new StationPart(s.Station, s.DistanceMm, [.. s.SpeedsMPerS.Select(ScheduleAnswer.ValuePart.Of)]))],
            study.Valve is not { } valve ? [] : [.. study.LiftsMm.Select(lift => new LiftPart(lift, ValveAreas.CurtainMm2(valve, lift), ValveAreas.LeastMm2(valve, lift)))],
            study.BreathingRpm is not { } rpm ? null : new(
                study.Coefficient, study.FlowCoefficient is null, [.. study.Speeds.Rpms.Select(each => InletMachIndex.Of(study.Engine, study.Valve!, study.Coefficient, each))],
                rpm.FallsFrom, rpm.SteeplyFrom),
            [.. study.Flow.Select(flow => new BenchPart(
                flow.FlowCfm, flow.TestPressureInH2O, flow.LiftMm, FlowBench.IdealMPerS(flow.TestPressureInH2O),
                FlowBench.MeanMPerS(flow.FlowCfm, least.AreaMm2.Value),
                study.Valve is null ? null : FlowBench.DischargeCoefficient(flow.FlowCfm, flow.TestPressureInH2O, ValveAreas.HeadMm2(study.Valve) * study.Valve.Count),
                [.. study.Speeds.Stations.Select(s => FlowBench.MeanMPerS(flow.FlowCfm, s.AreaMm2.Value))]))],
            [.. study.Judgements.Select(ScheduleAnswer.JudgementPart.Of)]);
    }

    /// <summary>Speeds at one station, one for each engine speed.</summary>
    public sealed record StationPart(int Station, double DistanceMm, IReadOnlyList<ScheduleAnswer.ValuePart> SpeedsMPerS);

    /// <summary>Areas at a lift; the least one is null when the seat's width was not told.</summary>
    public sealed record LiftPart(double LiftMm, double CurtainMm2, double? LeastMm2);

    /// <summary>The index at each engine speed and where it passes 0.5 and 0.6.</summary>
    public sealed record IndexPart(
        double FlowCoefficient, bool IsFlowCoefficientAssumed, IReadOnlyList<double> Index, double FallsFromRpm, double FallsSteeplyFromRpm);

    /// <summary>A figure of the bench.</summary>
    public sealed record BenchPart(
        double FlowCfm, double TestPressureInH2O, double? LiftMm, double IdealSpeedMPerS, double LeastSectionSpeedMPerS,
        double? DischargeCoefficientOnValve, IReadOnlyList<double> StationSpeedsMPerS);
}
