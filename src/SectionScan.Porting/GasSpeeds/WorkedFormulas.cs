using SectionScan.Porting.Engines;

namespace SectionScan.Porting.GasSpeeds;

/// <summary>A formula in use, its source, and an example that can be worked by hand.</summary>
/// <param name="Quantity">What it gives.</param>
/// <param name="Formula">The formula.</param>
/// <param name="Source">Where it is from.</param>
/// <param name="Example">The example's numbers.</param>
/// <param name="Expected">What the example comes to, worked out apart from this program.</param>
/// <param name="Computed">What this program makes of it, now.</param>
/// <param name="Unit">The unit of both.</param>
public sealed record WorkedFormula(string Quantity, string Formula, string Source, string Example, double Expected, double Computed, string Unit);

/// <summary>Every formula of the gas speeds with a worked example on an invented engine: bore 68, stroke 66, rod 120 mm, 7000 1/min, inlet
/// valve 33 mm, stem 5.5 mm, port 700 mm². The expected values were worked out independently of this program, to the digits shown.</summary>
public static class WorkedFormulas
{
    private const double Rpm = 7000;

    private static readonly EngineData Engine = new(68, 66, 2, 1500, 8000) { RodMm = 120 };
    private static readonly ValveData Valve = new(33, 5.5) { SeatWidthMm = 1.5, ThroatMm = 33 * 0.88 };

    /// <summary>The formulas.</summary>
    public static IReadOnlyList<WorkedFormula> All { get; } =
    [
        new("piston area", "πB²/4", Mensuration, "B 68 mm", 3631.681108, Engine.PistonAreaMm2, "mm²"),
        new("swept volume of a cylinder", "πB²/4·S", Mensuration, "B 68, S 66 mm", 239690.9531, Engine.SweptVolumeMm3, "mm³"),
        new("mean piston speed", "2SN/60", "Heywood 1988, eq. 2.9 (from memory)", "S 66 mm, N 7000", 15.4, PistonMotion.MeanSpeedMPerS(66, Rpm), "m/s"),
        new("peak piston speed", "(π/2)·v_p·sin θ·(1 + cos θ/√(R² − sin²θ)), largest", "Heywood 1988, eq. 2.11 (from memory)", "rod 120 mm", 25.092731, PistonMotion.Peak(66, 120, Rpm).SpeedMPerS, "m/s"),
        new("crank angle of the peak", "where the above is largest", "Heywood 1988, eq. 2.11 (from memory)", "rod 120 mm", 75.600949, PistonMotion.Peak(66, 120, Rpm).Crank.Degrees, "°"),
        new("mean gas speed", "v_p·A_piston/A_port, v_p mean piston speed", Continuity, "700 mm²", 79.896984, PortGasSpeed.MeanMPerS(Engine, 700, Rpm), "m/s"),
        new("mean gas speed while the valve is open", "V/(A·t), t = duration/(6N)", Continuity, "700 mm², 240°", 59.922738, PortGasSpeed.MeanWhileOpenMPerS(Engine, 700, Rpm, 240), "m/s"),
        new("engine speed for a gas speed", "60·V·A/(2S·A_piston)", Continuity, "75 m/s, 700 mm²", 6570.9614, PortGasSpeed.RpmFor(Engine, 700, 75), "1/min"),
        new("speed of sound", "√(γRT)", "ideal gas; ISO 2533 (from memory) gives 340.294 at 15 °C", "15 °C", 340.29399, Gas.SoundSpeedMPerS(15), "m/s"),
        new("inlet Mach index", "(B/D)²·v_p/(C·a)", Taylor, "C 0.35, 20 °C", 0.54431802, InletMachIndex.Of(Engine, Valve, 0.35, Rpm), ""),
        new("engine speed at index 0.5", "N·0.5/Z", Taylor, "C 0.35, 20 °C", 6430.0646, InletMachIndex.RpmAt(Engine, Valve, 0.35, 0.5), "1/min"),
        new("engine speed at index 0.6", "N·0.6/Z", Taylor, "C 0.35, 20 °C", 7716.0775, InletMachIndex.RpmAt(Engine, Valve, 0.35, 0.6), "1/min"),
        new("valve area", "πD²/4", Mensuration, "D 33 mm", 855.2986, ValveAreas.HeadMm2(Valve), "mm²"),
        new("valve area less stem", "π(D² − d²)/4", Mensuration, "d 5.5 mm", 831.54031, ValveAreas.HeadLessStemMm2(Valve), "mm²"),
        new("throat area", "π·(0.88·D)²/4", Mensuration, "0.88 of 33 mm", 662.34324, ValveAreas.ThroatMm2(Valve)!.Value, "mm²"),
        new("curtain area", "πDL", Mensuration, "L 9 mm", 933.05302, ValveAreas.CurtainMm2(Valve, 9), "mm²"),
        new("least area, low lift", "πL·cos β·(D − 2w + L/2·sin 2β)", Heywood, "L 2, w 1.5 mm, β 45°", 137.72937, ValveAreas.LeastMm2(Valve, 2)!.Value, "mm²"),
        new("least area, middle lift", "π(D − w)·√((L − w·tan β)² + w²)", Heywood, "L 6 mm", 469.409296, ValveAreas.LeastMm2(Valve, 6)!.Value, "mm²"),
        new("ideal speed on the bench", "√(2Δp/ρ)", "Bernoulli; inch of water after NIST SP 811 (from memory)", "28 inH2O, ρ 1.2", 107.815347, FlowBench.IdealMPerS(28), "m/s"),
        new("discharge coefficient on the valve", "Q/(A·v_ideal)", "definition", "100 cfm at 28 inH2O, D 33 mm", 0.51179412, FlowBench.DischargeCoefficient(100, 28, ValveAreas.HeadMm2(Valve)), ""),
        new("discharge coefficient on the curtain", "Q/(A·v_ideal)", "definition", "the same, L 9 mm", 0.46914461, FlowBench.DischargeCoefficient(100, 28, ValveAreas.CurtainMm2(Valve, 9)), ""),
        new("flow at another test pressure", "Q·√(p2/p1)", "turbulent flow", "1 cfm, 10 to 28 inH2O", 1.6733201, FlowBench.AtPressure(1, 10, 28), "cfm"),
        new("Mach number from a pressure ratio", "√(2/(γ−1)·((p0/p)^((γ−1)/γ) − 1))", "isentropic flow", "p/p0 0.93116714", 0.32082044, Gas.MachOf(0.93116714), ""),
        new("choked pressure ratio", "(2/(γ+1))^(γ/(γ−1))", "NASA Glenn Research Center, mass flow choking", "γ 1.4", 0.52828179, Gas.ChokedPressureRatio, ""),
    ];

    private const string Mensuration = "mensuration";
    private const string Continuity = "continuity, as if incompressible";
    private const string Taylor = "Taylor, The Internal-Combustion Engine in Theory and Practice, ch. 6; NACA TN 915 (from memory)";
    private const string Heywood = "Heywood 1988, eq. 6.7 and 6.8 (from memory; geometry derived again)";
}
