using System.ComponentModel;
using SectionScan.Cli.Options;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Schedule;

/// <summary>What <c>sectionscan schedule</c> is told.</summary>
internal sealed class ScheduleSettings : OutputSettings
{
    [CommandArgument(0, "<PORT>")]
    [Description("The port document, made by sectionscan port or by a job")]
    public string Port { get; init; } = string.Empty;

    [CommandOption("--with <PORT>")]
    [Description("A port to compare with, such as the exemplar; may be given several times")]
    public string[] With { get; init; } = [];

    [CommandOption("--by <AXIS>")]
    [Description("distance (true millimetres from one starting point) or share (of each port's length)")]
    [DefaultValue("distance")]
    public string By { get; init; } = "distance";

    [CommandOption("--length <MM>")]
    [Description("The whole length from the face (distance 0) to the seat along the centreline, so that the volume covers all of it")]
    public double? Length { get; init; }

    [CommandOption("--burette <CM3>")]
    [Description("The volume that a burette filled, to check stations and scale")]
    public double? Burette { get; init; }

    [CommandOption("--burette-u <CM3>")]
    [Description("Standard uncertainty of that volume")]
    [DefaultValue(0.3)]
    public double BuretteUncertainty { get; init; } = 0.3;

    [CommandOption("--out <DIR>")]
    [Description("Folder for the plots (SVG, PDF) and the table (CSV)")]
    public string? Out { get; init; }

    [CommandOption("--units <UNITS>")]
    [Description("mm or in: what is shown")]
    public UnitOption Units { get; init; }

    public override ValidationResult Validate()
    {
        if (By is not ("distance" or "share"))
        {
            return ValidationResult.Error($"--by {By} is not known: give distance or share.");
        }

        return Length is { } length && !(length is > 0 and <= 2000)
            ? ValidationResult.Error(FormattableString.Invariant($"--length {length} is out of range: give millimetres from 0 to 2000."))
            : Burette is { } filled && !(filled is > 0 and < 100_000)
            ? ValidationResult.Error(FormattableString.Invariant($"--burette {filled} is out of range: give cubic centimetres above zero."))
            : !(BuretteUncertainty is >= 0 and < 1000)
            ? ValidationResult.Error(FormattableString.Invariant($"--burette-u {BuretteUncertainty} is out of range: give cubic centimetres from 0."))
            : ValidationResult.Success();
    }
}
