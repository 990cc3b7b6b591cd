using SectionScan.Jobs.PortingJobs;
using SectionScan.Porting.Engines;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>A number of engine or valve that a person fills in.</summary>
/// <param name="Words">What it is, with its unit.</param>
/// <param name="IsValve">True for the valve.</param>
/// <param name="IsNeeded">True when there is no engine, or valve, without it.</param>
/// <param name="Of">What is told of it, or null.</param>
public sealed record EngineField(string Words, bool IsValve, bool IsNeeded, Func<PortData, double?> Of)
{
    private const string InMm = ", mm";


    private static readonly EngineField Bore = new("Bore, mm", false, true, data => data.Engine?.BoreMm);
    private static readonly EngineField Stroke = new("Stroke, mm", false, true, data => data.Engine?.StrokeMm);
    private static readonly EngineField Cylinders = new("Cylinders", false, true, data => data.Engine?.Cylinders);
    private static readonly EngineField RpmFrom = new("Lowest speed, 1/min", false, true, data => data.Engine?.RpmFrom);
    private static readonly EngineField RpmTo = new("Highest speed, 1/min", false, true, data => data.Engine?.RpmTo);
    private static readonly EngineField Torque = new("Most torque at, 1/min", false, false, data => data.Engine?.PeakTorqueRpm);
    private static readonly EngineField Power = new("Most power at, 1/min", false, false, data => data.Engine?.PeakPowerRpm);
    private static readonly EngineField Diameter = new("Valve diameter, mm", true, true, data => data.Valve?.DiameterMm);
    private static readonly EngineField Stem = new("Valve stem, mm", true, true, data => data.Valve?.StemMm);
    private static readonly EngineField Lift = new("Valve lift, mm", true, false, data => data.Valve?.LiftMm);

    /// <summary>A length, or a number of its own.</summary>
    public FieldUnit Unit => Words.EndsWith(InMm, StringComparison.Ordinal) ? FieldUnit.Length : FieldUnit.None;

    /// <summary>What it is; a length without its unit, which the window chooses.</summary>
    public string Name => Unit == FieldUnit.Length ? Words[..^InMm.Length] : Words;

    /// <summary>True for what is counted.</summary>
    public bool IsWhole => ReferenceEquals(this, Cylinders);

    /// <summary>All of them, the engine first.</summary>
    public static IReadOnlyList<EngineField> All { get; } = [Bore, Stroke, Cylinders, RpmFrom, RpmTo, Torque, Power, Diameter, Stem, Lift];

    /// <summary>The engine of filled fields; what has no field stays as it was.</summary>
    internal static EngineData EngineOf(Dictionary<string, double?> values, EngineData? before) => (before ?? new(0, 0, 0, 0, 0)) with
    {
        BoreMm = values[Bore.Words]!.Value,
        StrokeMm = values[Stroke.Words]!.Value,
        Cylinders = (int)Math.Clamp(values[Cylinders.Words]!.Value, 0, 1000),
        RpmFrom = values[RpmFrom.Words]!.Value,
        RpmTo = values[RpmTo.Words]!.Value,
        PeakTorqueRpm = values[Torque.Words],
        PeakPowerRpm = values[Power.Words],
    };

    /// <summary>The valve of filled fields; what has no field stays as it was.</summary>
    internal static ValveData ValveOf(Dictionary<string, double?> values, ValveData? before) => (before ?? new(0, 0)) with
    {
        DiameterMm = values[Diameter.Words]!.Value,
        StemMm = values[Stem.Words]!.Value,
        LiftMm = values[Lift.Words],
    };
}
