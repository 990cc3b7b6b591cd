using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Engines;

/// <summary>Finds engine data that cannot be true, before anything is computed from it.</summary>
public static class EngineRules
{
    /// <summary>Checks an engine.</summary>
    /// <param name="engine">The engine.</param>
    /// <param name="where">The file or command it comes from.</param>
    /// <returns>The engine, or one of <see cref="EngineProblems"/>.</returns>
    public static Result<EngineData> Check(EngineData engine, string where)
    {
        ArgumentNullException.ThrowIfNull(engine);
        var problem = OutOfRange(where, "bore", engine.BoreMm, 20, 1000, "mm")
            ?? OutOfRange(where, "stroke", engine.StrokeMm, 15, 2500, "mm")
            ?? OutOfRange(where, "number of cylinders", engine.Cylinders, 1, 48, "")
            ?? OutOfRange(where, "number of cylinders on one port", engine.CylindersPerPort, 1, 4, "")
            ?? OutOfRange(where, "number of ports on one cylinder", engine.PortsPerCylinder, 1, 4, "")
            ?? OutOfRange(where, "lowest engine speed", engine.RpmFrom, 50, 25000, "1/min")
            ?? OutOfRange(where, "highest engine speed", engine.RpmTo, 50, 25000, "1/min")
            ?? OutOfRange(where, "air temperature", engine.AirTemperatureC, -60, 1200, "°C")
            ?? (engine.RodMm is { } range ? OutOfRange(where, "rod", range, 15, 6000, "mm") : null)
            ?? (engine.PeakTorqueRpm is { } torque ? OutOfRange(where, "engine speed of most torque", torque, 50, 25000, "1/min") : null)
            ?? (engine.PeakPowerRpm is { } power ? OutOfRange(where, "engine speed of most power", power, 50, 25000, "1/min") : null);
        if (problem is not null)
        {
            return problem;
        }

        if (engine.RpmTo <= engine.RpmFrom)
        {
            return EngineProblems.SpeedsTurned(where, engine.RpmFrom, engine.RpmTo);
        }

        if (engine.RodMm is { } rod && rod <= engine.StrokeMm / 2)
        {
            return EngineProblems.RodTooShort(where, rod, engine.StrokeMm);
        }

        return engine.PeakTorqueRpm > engine.PeakPowerRpm
            ? EngineProblems.TorqueAbovePower(where, engine.PeakTorqueRpm.Value, engine.PeakPowerRpm!.Value)
            : engine;
    }

    /// <summary>Checks a valve.</summary>
    /// <param name="valve">The valve.</param>
    /// <param name="boreMm">The bore it opens into, mm; null when not known.</param>
    /// <param name="where">The file or command it comes from.</param>
    /// <returns>The valve, or one of <see cref="EngineProblems"/>.</returns>
    public static Result<ValveData> Check(ValveData valve, double? boreMm, string where)
    {
        ArgumentNullException.ThrowIfNull(valve);
        var problem = OutOfRange(where, "valve diameter", valve.DiameterMm, 8, 500, "mm")
            ?? OutOfRange(where, "valve stem", valve.StemMm, 2, 60, "mm")
            ?? OutOfRange(where, "number of valves on one port", valve.Count, 1, 4, "")
            ?? OutOfRange(where, "seat angle", valve.SeatAngle.Degrees, 15, 75, "°")
            ?? (valve.LiftMm is { } lift ? OutOfRange(where, "valve lift", lift, 0.1, 200, "mm") : null)
            ?? (valve.SeatWidthMm is { } width ? OutOfRange(where, "seat width", width, 0.1, 20, "mm") : null);
        if (problem is not null)
        {
            return problem;
        }

        if (valve.StemMm >= valve.DiameterMm / 2)
        {
            return EngineProblems.PartTooLarge(where, "valve stem", valve.StemMm, "half the valve", valve.DiameterMm / 2);
        }

        if (valve.ThroatMm is { } throat && throat >= valve.DiameterMm)
        {
            return EngineProblems.PartTooLarge(where, "throat", throat, "the valve", valve.DiameterMm);
        }

        if (valve.ThroatMm is { } narrow && narrow <= valve.StemMm)
        {
            return EngineProblems.PartTooLarge(where, "valve stem", valve.StemMm, "the throat", narrow);
        }

        if (valve.GuideMm is { } guide && guide <= valve.StemMm)
        {
            return EngineProblems.PartTooLarge(where, "valve stem", valve.StemMm, "the guide", guide);
        }

        return boreMm is { } bore && valve.DiameterMm >= bore
            ? EngineProblems.PartTooLarge(where, "valve", valve.DiameterMm, "the bore", bore)
            : valve;
    }

    private static Problem? OutOfRange(string where, string what, double value, double least, double most, string unit) =>
        value >= least && value <= most ? null : EngineProblems.OutOfRange(where, what, value, least, most, unit);
}
