namespace SectionScan.Porting.GasSpeeds;

/// <summary>Air as an ideal gas.</summary>
public static class Gas
{
    /// <summary>Ratio of specific heats of air.</summary>
    public const double HeatRatio = 1.4;

    /// <summary>Specific gas constant of air, J/(kg·K) (ISO 2533, from memory).</summary>
    public const double AirConstant = 287.05287;

    /// <summary>0 °C in kelvin.</summary>
    public const double ZeroCelsiusK = 273.15;

    /// <summary>Pressure of the standard atmosphere, Pa (ISO 2533, from memory).</summary>
    public const double StandardPressurePa = 101325;

    /// <summary>Speed of sound in air, m/s: √(γRT).</summary>
    public static double SoundSpeedMPerS(double celsius) => Math.Sqrt(HeatRatio * AirConstant * (celsius + ZeroCelsiusK));

    /// <summary>Density of air, kg/m³: p/(RT).</summary>
    public static double DensityKgPerM3(double celsius, double pressurePa = StandardPressurePa) => pressurePa / (AirConstant * (celsius + ZeroCelsiusK));

    /// <summary>Mach number of a flow from rest, of the pressure behind it over that before it: √(2/(γ−1)·((p0/p)^((γ−1)/γ) − 1))
    /// (isentropic flow; Heywood 1988, app. C, from memory).</summary>
    /// <param name="pressureRatio">p/p0, between 0 and 1.</param>
    public static double MachOf(double pressureRatio) =>
        Math.Sqrt(2 / (HeatRatio - 1) * (Math.Pow(1 / pressureRatio, (HeatRatio - 1) / HeatRatio) - 1));

    /// <summary>The pressure ratio at which the flow chokes, p*/p0: (2/(γ+1))^(γ/(γ−1)) (NASA Glenn Research Center, mass flow choking).</summary>
    public static double ChokedPressureRatio { get; } = Math.Pow(2 / (HeatRatio + 1), HeatRatio / (HeatRatio - 1));
}
