using System.Text.Json.Serialization;

namespace SectionScan.Porting.Engines;

/// <summary>What of an engine sets the gas speed in its ports.</summary>
/// <param name="BoreMm">Bore.</param>
/// <param name="StrokeMm">Stroke.</param>
/// <param name="Cylinders">Number of cylinders.</param>
/// <param name="RpmFrom">Lowest speed looked at, 1/min.</param>
/// <param name="RpmTo">Highest speed looked at, 1/min.</param>
public sealed record EngineData(double BoreMm, double StrokeMm, int Cylinders, double RpmFrom, double RpmTo)
{
    /// <summary>Length of the connecting rod between centres, mm; null when not told.</summary>
    public double? RodMm { get; init; }

    /// <summary>How many cylinders one port feeds: 2 for a port shared by neighbours.</summary>
    public int CylindersPerPort { get; init; } = 1;

    /// <summary>How many ports of a kind one cylinder has.</summary>
    public int PortsPerCylinder { get; init; } = 1;

    /// <summary>Engine speed of the most torque wanted, 1/min; null when not told.</summary>
    public double? PeakTorqueRpm { get; init; }

    /// <summary>Engine speed of the most power wanted, 1/min; null when not told.</summary>
    public double? PeakPowerRpm { get; init; }

    /// <summary>Temperature of the air in the port, °C.</summary>
    public double AirTemperatureC { get; init; } = 20;

    /// <summary>Area of one piston, mm²: πB²/4.</summary>
    [JsonIgnore]
    public double PistonAreaMm2 => Math.PI * BoreMm * BoreMm / 4;

    /// <summary>Swept volume of one cylinder, mm³: πB²/4·S.</summary>
    [JsonIgnore]
    public double SweptVolumeMm3 => PistonAreaMm2 * StrokeMm;
}
