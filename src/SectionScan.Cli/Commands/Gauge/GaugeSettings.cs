using System.ComponentModel;
using SectionScan.Cli.Options;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Gauge;

/// <summary>What <c>sectionscan gauge</c> is told.</summary>
internal sealed class GaugeSettings : OutputSettings
{
    [CommandArgument(0, "<STUDY.csv>")]
    [Description("Table of photos: photo,plug,shape,width_mm,height_mm,thickness_mm,u_mm,person,camera,sheet; shape is circle, stadium, square or rectangle")]
    public string Study { get; init; } = string.Empty;

    [CommandOption("--out <FILE>", isRequired: true)]
    [Description("Where to write the study, for sectionscan digitise --gauge")]
    public string Out { get; init; } = string.Empty;

    [CommandOption("--lens <FILE>")]
    [Description("The camera's lens profile, made by sectionscan lens")]
    public string? Lens { get; init; }

    [CommandOption("--print-ratio <X,Y>")]
    [Description("Measured over nominal length of the target's check bars, across and up, for example 0.998,1.001")]
    public PrintRatioOption? PrintRatio { get; init; }

    [CommandOption("--units <UNITS>")]
    [Description("mm or in: what is shown; the table and the study's file are always in millimetres")]
    public UnitOption Units { get; init; }
}
