using SectionScan.Porting.Engines;

namespace SectionScan.Porting.GasSpeeds;

/// <summary>Mean gas speed in a port, as if the gas were incompressible and followed the piston.</summary>
public static class PortGasSpeed
{
    private const double SecondsPerMinute = 60;
    private const double MmPerM = 1000;

    /// <summary>Mean speed while one cylinder draws, m/s: v̄·A_piston/A_port, the port's share of the cylinder's flow (continuity).</summary>
    /// <param name="engine">The engine. Where a cylinder has several ports of a kind each carries an even share; where one port feeds several
    /// cylinders they are taken to draw one after the other.</param>
    /// <param name="areaMm2">Area of the port, mm².</param>
    /// <param name="rpm">Engine speed, 1/min.</param>
    public static double MeanMPerS(EngineData engine, double areaMm2, double rpm)
    {
        ArgumentNullException.ThrowIfNull(engine);
        return PistonMotion.MeanSpeedMPerS(engine.StrokeMm, rpm) * engine.PistonAreaMm2 / (engine.PortsPerCylinder * areaMm2);
    }

    /// <summary>Mean speed when the swept volume passes in the time that the valve is open, m/s: V_d/(A·t), t = duration/(6N).</summary>
    /// <param name="engine">The engine.</param>
    /// <param name="areaMm2">Area of the port, mm².</param>
    /// <param name="rpm">Engine speed, 1/min.</param>
    /// <param name="openDeg">Crank angle during which the valve is open, degrees; 180 gives <see cref="MeanMPerS"/>.</param>
    public static double MeanWhileOpenMPerS(EngineData engine, double areaMm2, double rpm, double openDeg)
    {
        ArgumentNullException.ThrowIfNull(engine);
        var seconds = openDeg / (6 * rpm);
        return engine.SweptVolumeMm3 / engine.PortsPerCylinder / areaMm2 / seconds / MmPerM;
    }

    /// <summary>Engine speed at which the mean speed is reached, 1/min: 60·V·A/(2S·A_piston).</summary>
    public static double RpmFor(EngineData engine, double areaMm2, double speedMPerS)
    {
        ArgumentNullException.ThrowIfNull(engine);
        return SecondsPerMinute * speedMPerS * MmPerM * engine.PortsPerCylinder * areaMm2 / (2 * engine.StrokeMm * engine.PistonAreaMm2);
    }

    /// <summary>Area at which the mean speed is reached, mm².</summary>
    public static double AreaMm2For(EngineData engine, double rpm, double speedMPerS) => MeanMPerS(engine, 1, rpm) / speedMPerS;
}
