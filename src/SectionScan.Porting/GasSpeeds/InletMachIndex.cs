using SectionScan.Porting.Engines;

namespace SectionScan.Porting.GasSpeeds;

/// <summary>Taylor's inlet Mach index Z: mean piston speed brought to the mean effective area of the inlet valves, over the speed of sound.
/// Above about 0.5 to 0.6 an engine breathes ever worse.</summary>
/// <remarks>Z = (B/D)²·v̄/(C·a), with n valves n·D² (C. F. Taylor, The Internal-Combustion Engine in Theory and Practice, vol. 1, ch. 6;
/// Livengood and Stanitz 1943, NACA TN 915; both from memory. The limit of 0.5 also in the JSME mechanical engineering dictionary).</remarks>
public static class InletMachIndex
{
    /// <summary>From here on volumetric efficiency begins to fall.</summary>
    public const double FallsFrom = 0.5;

    /// <summary>From here on it falls steeply.</summary>
    public const double FallsSteeplyFrom = 0.6;

    /// <summary>The mean flow coefficient taken where nobody measured it (an assumption; 0.35 to 0.4 is usual, common practice, no source).</summary>
    public const double AssumedFlowCoefficient = 0.35;

    /// <summary>The index.</summary>
    /// <param name="engine">The engine.</param>
    /// <param name="valve">The inlet valve.</param>
    /// <param name="flowCoefficient">Mean flow coefficient over the lift, referred to the area of the valve's head.</param>
    /// <param name="rpm">Engine speed, 1/min.</param>
    public static double Of(EngineData engine, ValveData valve, double flowCoefficient, double rpm)
    {
        ArgumentNullException.ThrowIfNull(engine);
        ArgumentNullException.ThrowIfNull(valve);
        var valves = valve.DiameterMm * valve.DiameterMm * valve.Count * engine.PortsPerCylinder / engine.CylindersPerPort;
        return engine.BoreMm * engine.BoreMm / valves * PistonMotion.MeanSpeedMPerS(engine.StrokeMm, rpm)
            / (flowCoefficient * Gas.SoundSpeedMPerS(engine.AirTemperatureC));
    }

    /// <summary>The engine speed at which the index reaches a value, 1/min.</summary>
    public static double RpmAt(EngineData engine, ValveData valve, double flowCoefficient, double index)
    {
        const double AnyRpm = 1000;
        return AnyRpm * index / Of(engine, valve, flowCoefficient, AnyRpm);
    }
}
