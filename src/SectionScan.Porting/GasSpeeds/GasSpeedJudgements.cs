using System.Globalization;
using SectionScan.Porting.Engines;
using SectionScan.Porting.Judgements;
using SectionScan.Porting.Ports;
using SectionScan.Porting.Schedules;

namespace SectionScan.Porting.GasSpeeds;

/// <summary>Whether a port is too large or too small for its engine, in plain words.</summary>
public static class GasSpeedJudgements
{
    /// <summary>Usual mean speed at the least section near peak torque, m/s.</summary>
    public static readonly (double From, double To) NearPeakTorqueMPerS = (60, 75);

    /// <summary>Usual mean speed at the least section near peak power, m/s.</summary>
    public static readonly (double From, double To) NearPeakPowerMPerS = (80, 110);

    /// <summary>Throat over valve diameter.</summary>
    public static readonly (double From, double To) ThroatOverValve = (0.85, 0.90);

    /// <summary>Least section over the area of the throat.</summary>
    public static readonly (double From, double To) LeastOverThroat = (0.80, 0.95);

    /// <summary>The highest Mach number at the least section that is held good while the piston is fastest.</summary>
    public const double MostPeakMach = 0.55;

    private const string Practice = "common practice, no source";

    private const string TooLarge =
        "Gas speed falls with the area and its energy with the square of it, so that at low speed the column does not keep filling the cylinder and flows back: low-speed torque is lost. Area gained on a bench is no gain in itself.";

    private const string TooLargeBasis = "limits: common practice, no source; reason: standard reasoning, from memory";

    /// <summary>Judges an intake or exhaust port. Speed limits are those of intake ports; of an exhaust port only throat and least section
    /// are judged.</summary>
    public static IReadOnlyList<Judgement> Of(AreaSchedule schedule, PortKind kind, EngineData engine, ValveData? valve, double? flowCoefficient)
    {
        ArgumentNullException.ThrowIfNull(schedule);
        ArgumentNullException.ThrowIfNull(engine);
        var judgements = new List<Judgement>();
        if (kind == PortKind.Intake)
        {
            var wishes = new[] { ("peak torque", engine.PeakTorqueRpm, NearPeakTorqueMPerS), ("peak power", engine.PeakPowerRpm, NearPeakPowerMPerS) }
                .Where(wish => wish.Item2 is not null).Select(wish => (Near: wish.Item1, Rpm: wish.Item2!.Value, UsualMPerS: wish.Item3)).ToList();
            if (wishes.Count > 0)
            {
                judgements.Add(PortSizeVerdict.Of(schedule, engine, wishes, ValveLimitRpm(engine, valve, flowCoefficient)));
            }

            wishes.ForEach(wish => Speed(judgements, schedule, engine, wish.Rpm, wish.Near, wish.UsualMPerS));
            PeakMach(judgements, schedule, engine);
            if (valve is not null)
            {
                MachIndex(judgements, engine, valve, flowCoefficient);
            }
        }

        if (valve?.ThroatMm is { } throat)
        {
            Throat(judgements, schedule, valve, throat);
        }

        return judgements;
    }

    private static void Speed(
        List<Judgement> judgements, AreaSchedule schedule, EngineData engine, double at, string near, (double From, double To) usual)
    {
        var least = schedule.Least;
        var speed = GasSpeedSchedule.SpeedMPerS(engine, least.AreaMm2, at);
        string Finding(UnitWords unit) =>
            Text($"At {near} ({at:0} 1/min) the mean gas speed at the least section, station {least.Position.Station}, is {unit.Speed(speed)}; usual is {unit.SpeedLimits(usual)}.");
        if (speed.Value < usual.From)
        {
            var wanted = PortGasSpeed.AreaMm2For(engine, at, usual.From);
            judgements.Add(new(
                "mean-speed-low", LevelOf(usual.From - speed.Value, speed.ExpandedUncertainty), new(unit => Finding(unit) + " The port is too large for that engine speed."),
                new(unit => TooLarge + $" For {unit.SpeedLimit(usual.From)} the least section would be {unit.RoundArea(wanted)}."), TooLargeBasis));
        }
        else if (speed.Value > usual.To)
        {
            var wanted = PortGasSpeed.AreaMm2For(engine, at, usual.To);
            judgements.Add(new(
                "mean-speed-high", LevelOf(speed.Value - usual.To, speed.ExpandedUncertainty), new(unit => Finding(unit) + " The port is too small for that engine speed."),
                new(unit => $"Losses grow with the square of the speed, and power falls off early. For {unit.SpeedLimit(usual.To)} the least section would be {unit.RoundArea(wanted)}."), Practice));
        }
        else
        {
            judgements.Add(new("mean-speed-usual", JudgementLevel.Usual, new(Finding), "Neither too large nor too small for that engine speed.", Practice));
        }
    }

    private static void PeakMach(List<Judgement> judgements, AreaSchedule schedule, EngineData engine)
    {
        if (engine.RodMm is not { } rod)
        {
            return;
        }

        var (peak, _) = PistonMotion.Peak(engine.StrokeMm, rod, engine.RpmTo);
        var ratio = peak / PistonMotion.MeanSpeedMPerS(engine.StrokeMm, engine.RpmTo);
        var mach = ratio * PortGasSpeed.MeanMPerS(engine, schedule.Least.AreaMm2.Value, engine.RpmTo) / Gas.SoundSpeedMPerS(engine.AirTemperatureC);
        var finding = new Wording(unit => Text($"At {engine.RpmTo:0} 1/min, when the piston is fastest ({unit.Speed(peak)}), the gas at station {schedule.Least.Position.Station} is at Mach {mach:0.00}."));
        judgements.Add(mach > MostPeakMach
            ? new("peak-mach-high", JudgementLevel.Outside, finding, Text($"Above about {MostPeakMach:0.00} the port begins to choke in every stroke; more engine speed brings little more air."), Practice)
            : new("peak-mach-usual", JudgementLevel.Usual, finding, "Below choking over the whole range.", Practice));
    }

    /// <summary>The engine speed from which the valve holds the breathing back, when that lies within the range.</summary>
    private static double? ValveLimitRpm(EngineData engine, ValveData? valve, double? flowCoefficient) =>
        valve is not null && InletMachIndex.RpmAt(engine, valve, flowCoefficient ?? InletMachIndex.AssumedFlowCoefficient, InletMachIndex.FallsFrom) is var rpm && rpm < engine.RpmTo
            ? rpm : null;

    private static void MachIndex(List<Judgement> judgements, EngineData engine, ValveData valve, double? flowCoefficient)
    {
        var coefficient = flowCoefficient ?? InletMachIndex.AssumedFlowCoefficient;
        var (falls, steeply) = (
            InletMachIndex.RpmAt(engine, valve, coefficient, InletMachIndex.FallsFrom),
            InletMachIndex.RpmAt(engine, valve, coefficient, InletMachIndex.FallsSteeplyFrom));
        var assumed = flowCoefficient is null ? ", assumed" : "";
        var index = InletMachIndex.Of(engine, valve, coefficient, engine.RpmTo);
        var finding = Text($"Inlet Mach index {index:0.000} at {engine.RpmTo:0} 1/min (mean flow coefficient {coefficient:0.00}{assumed}); it passes 0.5 at {falls:0} and 0.6 at {steeply:0} 1/min.");
        const string Basis = "Taylor, The Internal-Combustion Engine in Theory and Practice, ch. 6, and Livengood and Stanitz 1943, NACA TN 915 (from memory); limit 0.5 also in the JSME mechanical engineering dictionary";
        judgements.Add(index > InletMachIndex.FallsFrom
            ? new(
                "mach-index-high", flowCoefficient is null ? JudgementLevel.Look : JudgementLevel.Outside, finding,
                Text($"Breathing suffers from about {falls:0} 1/min on, where the valve becomes the limit and a larger port alone brings nothing, and steeply from {steeply:0}."), Basis)
            : new("mach-index-usual", JudgementLevel.Usual, finding, "The valves let the engine breathe over the whole range.", Basis));
    }

    private static void Throat(List<Judgement> judgements, AreaSchedule schedule, ValveData valve, double throatMm)
    {
        var ratio = throatMm / valve.DiameterMm;
        var finding = Text($"The throat is {ratio:0.000} of the valve's diameter; usual is {ThroatOverValve.From:0.00} to {ThroatOverValve.To:0.00}.");
        judgements.Add(
            ratio > ThroatOverValve.To ? new("throat-large", JudgementLevel.Outside, finding, "Little is left behind the seat for cooling and for the turn under it; a seat once undercut is only mended by a new insert.", Practice)
            : ratio < ThroatOverValve.From ? new("throat-small", JudgementLevel.Outside, finding, "The throat holds the flow back at high lift.", Practice)
            : new("throat-usual", JudgementLevel.Usual, finding, "In proportion to the valve.", Practice));

        var stemless = ValveAreas.ThroatMm2(valve)!.Value;
        var least = schedule.Least.AreaMm2.Value / stemless;
        var second = Text($"The least section, station {schedule.Least.Position.Station}, is {least:0.00} of the throat's area; usual is {LeastOverThroat.From:0.00} to {LeastOverThroat.To:0.00}.");
        judgements.Add(
            least > LeastOverThroat.To ? new("least-section-large", JudgementLevel.Look, second, "For its throat the port is large: the gas is slower all along it than it need be.", TooLargeBasis)
            : least < LeastOverThroat.From ? new("least-section-small", JudgementLevel.Look, second, "For its throat the port is small: it may hold the flow back before the valve does.", Practice)
            : new("least-section-usual", JudgementLevel.Usual, second, "In proportion to the throat.", Practice));
    }

    private static JudgementLevel LevelOf(double beyond, double expandedUncertainty) =>
        beyond > expandedUncertainty ? JudgementLevel.Outside : JudgementLevel.Look;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
