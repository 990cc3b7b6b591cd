using MathNet.Numerics;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Porting.GasSpeeds;

/// <summary>How fast a piston moves.</summary>
public static class PistonMotion
{
    private const double SecondsPerMinute = 60;
    private const double MmPerM = 1000;

    /// <summary>Mean piston speed, m/s: 2SN/60 (Heywood 1988, Internal Combustion Engine Fundamentals, eq. 2.9, from memory).</summary>
    /// <param name="strokeMm">Stroke, mm.</param>
    /// <param name="rpm">Engine speed, 1/min.</param>
    public static double MeanSpeedMPerS(double strokeMm, double rpm) => 2 * strokeMm / MmPerM * rpm / SecondsPerMinute;

    /// <summary>The highest piston speed and the crank angle after top dead centre where it occurs; exact crank and rod.</summary>
    /// <param name="strokeMm">Stroke, mm.</param>
    /// <param name="rodMm">Rod between centres, mm; more than half the stroke.</param>
    /// <param name="rpm">Engine speed, 1/min.</param>
    /// <remarks>v/v̄ = (π/2)·sin θ·(1 + cos θ/√(R² − sin²θ)), R rod over crank (Heywood 1988, eq. 2.11, from memory).</remarks>
    public static (double SpeedMPerS, Angle Crank) Peak(double strokeMm, double rodMm, double rpm)
    {
        var ratio = rodMm / (strokeMm / 2);
        if (!(ratio > 1))
        {
            throw new ArgumentOutOfRangeException(nameof(rodMm), rodMm, "A rod is longer than the crank.");
        }

        // One peak between top dead centre and a quarter turn: where the speed's derivative is zero.
        var crank = FindRoots.OfFunction(angle => SpeedRatio(angle + Step, ratio) - SpeedRatio(angle - Step, ratio), 0.1, Math.PI / 2, 1e-12);
        return (SpeedRatio(crank, ratio) * MeanSpeedMPerS(strokeMm, rpm), Angle.FromRadians(crank));
    }

    private const double Step = 1e-4;

    private static double SpeedRatio(double crank, double ratio)
    {
        var (sin, cos) = Math.SinCos(crank);
        return Math.PI / 2 * sin * (1 + (cos / Math.Sqrt((ratio * ratio) - (sin * sin))));
    }
}
