using System.ComponentModel;
using System.Globalization;
using SectionScan.Cli.Options;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Engines;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.GasSpeed;

/// <summary>What <c>sectionscan gas-speed</c> is told.</summary>
internal sealed class GasSpeedSettings : OutputSettings
{
    [CommandArgument(0, "[PORT]")]
    [Description("The port document, made by sectionscan port or by a job")]
    public string? Port { get; init; }

    [CommandOption("--bore <MM>")]
    [Description("Bore")]
    public double? Bore { get; init; }

    [CommandOption("--stroke <MM>")]
    [Description("Stroke")]
    public double? Stroke { get; init; }

    [CommandOption("--rod <MM>")]
    [Description("Rod between centres; tells the fastest piston too")]
    public double? Rod { get; init; }

    [CommandOption("--cylinders <N>")]
    [Description("Number of cylinders")]
    [DefaultValue(1)]
    public int Cylinders { get; init; } = 1;

    [CommandOption("--cylinders-per-port <N>")]
    [Description("How many cylinders one port feeds")]
    [DefaultValue(1)]
    public int CylindersPerPort { get; init; } = 1;

    [CommandOption("--ports-per-cylinder <N>")]
    [Description("How many ports of this kind a cylinder has")]
    [DefaultValue(1)]
    public int PortsPerCylinder { get; init; } = 1;

    [CommandOption("--rpm-from <RPM>")]
    [Description("Lowest engine speed looked at, 1/min")]
    [DefaultValue(1500.0)]
    public double RpmFrom { get; init; } = 1500;

    [CommandOption("--rpm-to <RPM>")]
    [Description("Highest engine speed looked at, 1/min")]
    public double? RpmTo { get; init; }

    [CommandOption("--torque-rpm <RPM>")]
    [Description("Engine speed at which the most torque is wanted")]
    public double? TorqueRpm { get; init; }

    [CommandOption("--power-rpm <RPM>")]
    [Description("Engine speed at which the most power is wanted")]
    public double? PowerRpm { get; init; }

    [CommandOption("--air <CELSIUS>")]
    [Description("Temperature of the air in the port, °C")]
    [DefaultValue(20.0)]
    public double Air { get; init; } = 20;

    [CommandOption("--valve <MM>")]
    [Description("Diameter of the valve's head")]
    public double? Valve { get; init; }

    [CommandOption("--stem <MM>")]
    [Description("Diameter of the valve's stem; belongs to --valve")]
    public double? Stem { get; init; }

    [CommandOption("--lift <MM>")]
    [Description("Largest lift of the valve")]
    public double? Lift { get; init; }

    [CommandOption("--seat <MM>")]
    [Description("Width of the valve's seat, across the axis; tells the true least area at each lift")]
    public double? Seat { get; init; }

    [CommandOption("--throat <MM>")]
    [Description("Diameter of the throat behind the seat")]
    public double? Throat { get; init; }

    [CommandOption("--flow-coefficient <C>")]
    [Description("Mean flow coefficient of the inlet valve over the lift, for the Mach index; 0.35 is assumed when left out")]
    public double? FlowCoefficient { get; init; }

    [CommandOption("--flow <CFM>")]
    [Description("A figure of the flow bench, cubic feet a minute; needs --test-pressure")]
    public double? Flow { get; init; }

    [CommandOption("--test-pressure <INH2O>")]
    [Description("Test pressure of that figure, inches of water")]
    public double? TestPressure { get; init; }

    [CommandOption("--formulas")]
    [Description("Show every formula with its source and a worked example, then end")]
    public bool ShowsFormulas { get; init; }

    [CommandOption("--out <DIR>")]
    [Description("Folder for the plot (SVG, PDF) and the table (CSV)")]
    public string? Out { get; init; }

    [CommandOption("--units <UNITS>")]
    [Description("mm or in: what is shown, speeds in m/s or ft/s; options are always in millimetres")]
    public UnitOption Units { get; init; }

    /// <summary>The engine as told.</summary>
    public EngineData Engine => new(Bore ?? 0, Stroke ?? 0, Cylinders, RpmFrom, RpmTo ?? 0)
    {
        RodMm = Rod,
        CylindersPerPort = CylindersPerPort,
        PortsPerCylinder = PortsPerCylinder,
        PeakTorqueRpm = TorqueRpm,
        PeakPowerRpm = PowerRpm,
        AirTemperatureC = Air,
    };

    /// <summary>The valve as told, or null.</summary>
    public ValveData? ValveData => Valve is { } diameter && Stem is { } stem
        ? new(diameter, stem) { LiftMm = Lift, SeatWidthMm = Seat, ThroatMm = Throat, SeatAngle = Angle.FromDegrees(45) }
        : null;

    public override ValidationResult Validate()
    {
        if (ShowsFormulas)
        {
            return ValidationResult.Success();
        }

        var missing = new[] { (Port, "PORT"), (Bore?.ToString(CultureInfo.InvariantCulture), "--bore"), (Stroke?.ToString(CultureInfo.InvariantCulture), "--stroke"), (RpmTo?.ToString(CultureInfo.InvariantCulture), "--rpm-to") }
            .Where(each => each.Item1 is null).Select(each => each.Item2).ToList();
        return missing.Count > 0
            ? ValidationResult.Error($"{string.Join(", ", missing)} must be given: gas speed needs the port and its engine.")
            : (Valve is null) != (Stem is null)
            ? ValidationResult.Error("--valve and --stem belong together: the diameters of the valve's head and stem.")
            : (Flow is null) != (TestPressure is null)
            ? ValidationResult.Error("--flow and --test-pressure belong together: a figure of the bench and its pressure.")
            : (Flow is { } flow && !(flow is > 0 and < 100_000)) || (TestPressure is { } pressure && !(pressure is > 0 and < 400))
            ? ValidationResult.Error("--flow and --test-pressure must be above zero: cubic feet a minute and inches of water.")
            : FlowCoefficient is { } c && !(c is > 0.05 and < 1)
            ? ValidationResult.Error(FormattableString.Invariant($"--flow-coefficient {c} is out of range: give a number between 0.05 and 1."))
            : ValidationResult.Success();
    }
}
