namespace SectionScan.Porting.GasSpeeds;

/// <summary>A port on a flow bench: air drawn through it by a test pressure.</summary>
public static class FlowBench
{
    /// <summary>One inch of water, conventional, Pa (NIST SP 811, from memory).</summary>
    public const double PaPerInH2O = 249.08891;

    /// <summary>One cubic foot a minute, m³/s (exact).</summary>
    public const double M3PerSPerCfm = 4.719474432e-4;

    /// <summary>Density of the air that ideal speeds are stated for, kg/m³.</summary>
    public const double UsualDensityKgPerM3 = 1.2;

    private const double Mm2PerM2 = 1e6;

    /// <summary>Mean speed at a station on the bench, m/s: Q/A (continuity; as if incompressible).</summary>
    public static double MeanMPerS(double flowCfm, double areaMm2) => flowCfm * M3PerSPerCfm / (areaMm2 / Mm2PerM2);

    /// <summary>Ideal speed of air drawn by a pressure, m/s: √(2Δp/ρ) (Bernoulli, incompressible).</summary>
    public static double IdealMPerS(double testPressureInH2O, double densityKgPerM3 = UsualDensityKgPerM3) =>
        Math.Sqrt(2 * testPressureInH2O * PaPerInH2O / densityKgPerM3);

    /// <summary>Area that the flow would need at the ideal speed, mm².</summary>
    public static double IdealAreaMm2(double flowCfm, double testPressureInH2O) =>
        flowCfm * M3PerSPerCfm / IdealMPerS(testPressureInH2O) * Mm2PerM2;

    /// <summary>Discharge coefficient for a stated area: measured over ideal flow, Q/(A·v_ideal).</summary>
    public static double DischargeCoefficient(double flowCfm, double testPressureInH2O, double areaMm2) =>
        IdealAreaMm2(flowCfm, testPressureInH2O) / areaMm2;

    /// <summary>The flow at another test pressure: times √(p2/p1), as turbulent flow goes.</summary>
    public static double AtPressure(double flowCfm, double fromInH2O, double toInH2O) => flowCfm * Math.Sqrt(toInH2O / fromInH2O);
}
