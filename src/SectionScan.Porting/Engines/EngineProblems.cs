using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Engines;

/// <summary>What can be wrong with engine, valve and flow data.</summary>
public static class EngineProblems
{
    /// <summary>A number that no engine has.</summary>
    public static Problem OutOfRange(string where, string what, double value, double least, double most, string unit) => new(
        "engine-data-out-of-range", Text($"The {what} is given as {value}{Spaced(unit)}."), where,
        Text($"Give the {what} between {least} and {most}{Spaced(unit)}; mind the unit."));

    /// <summary>The range of engine speeds is turned round.</summary>
    public static Problem SpeedsTurned(string where, double from, double to) => new(
        "engine-speeds-turned", Text($"The engine speeds run from {from} to {to} 1/min."), where, "Give the lower speed first and a higher one after it.");

    /// <summary>A rod that cannot reach the crank.</summary>
    public static Problem RodTooShort(string where, double rodMm, double strokeMm) => new(
        "engine-rod-too-short", Text($"A rod of {rodMm} mm cannot turn a crank of {strokeMm / 2} mm (half the stroke)."), where,
        "Give the rod's length between centres, in millimetres; it is usually 1.5 to 2.2 strokes.");

    /// <summary>More torque above more power.</summary>
    public static Problem TorqueAbovePower(string where, double torqueRpm, double powerRpm) => new(
        "engine-torque-above-power", Text($"The most torque is said to be at {torqueRpm} 1/min, above the most power at {powerRpm} 1/min."), where,
        "Power is torque times speed: its peak lies at or above that of torque. Exchange the two.");

    /// <summary>A part that does not go where it belongs.</summary>
    public static Problem PartTooLarge(string where, string part, double partMm, string other, double otherMm) => new(
        "engine-part-too-large", Text($"The {part} of {partMm} mm is not smaller than {other} of {otherMm} mm."), where,
        "Measure both again; diameters, in millimetres.");

    private static string Spaced(string unit) => unit.Length == 0 || unit == "°" ? unit : " " + unit;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
