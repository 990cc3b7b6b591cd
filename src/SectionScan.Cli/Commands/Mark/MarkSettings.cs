using System.ComponentModel;
using SectionScan.Cli.Options;
using SectionScan.Metrology.Frames;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Mark;

/// <summary>What <c>sectionscan mark</c> is told.</summary>
internal sealed class MarkSettings : OutputSettings
{
    [CommandArgument(0, "<SECTION>")]
    [Description("The section document")]
    public string Section { get; init; } = string.Empty;

    [CommandOption("--guide-axis <X,Y,X,Y>")]
    [Description("Two points of the valve guide's axis, from floor to roof, mm in the section's frame")]
    public string? GuideAxis { get; init; }

    [CommandOption("--floor-line <X,Y,X,Y>")]
    [Description("Two points of the floor's line, from left to right, mm in the section's frame")]
    public string? FloorLine { get; init; }

    [CommandOption("--point <NAME=X,Y>")]
    [Description("A point by name, the same name for the same place in every section; may be repeated")]
    public string[] Point { get; init; } = [];

    [CommandOption("--clear")]
    [Description("Take away the marks that are there first")]
    public bool IsCleared { get; init; }

    [CommandOption("--out <FILE>")]
    [Description("Write to this file instead of over the document")]
    public string? Out { get; init; }

    /// <summary>What is to be marked; only after <see cref="Validate"/>.</summary>
    public SectionMarks Marks => new(Line(GuideAxis), Line(FloorLine), Point.Select(Named).ToDictionary(each => each!.Value.Name, each => each!.Value.Place));

    public override ValidationResult Validate()
    {
        var fault =
            GuideAxis is not null && Line(GuideAxis) is null ? $"--guide-axis {GuideAxis} is not two points: give X,Y,X,Y in mm, at least {SectionLine.ShortestMm} mm apart."
            : FloorLine is not null && Line(FloorLine) is null ? $"--floor-line {FloorLine} is not two points: give X,Y,X,Y in mm, at least {SectionLine.ShortestMm} mm apart."
            : Point.FirstOrDefault(one => Named(one) is null) is { } point ? $"--point {point} is not a name and a place: give NAME=X,Y in mm."
            : Point.Select(Named).GroupBy(each => each!.Value.Name).Any(group => group.Count() > 1) ? "--point: a name stands for one place."
            : null;
        return fault is null ? ValidationResult.Success() : ValidationResult.Error(fault);
    }

    private static SectionLine? Line(string? text)
    {
        var line = text is not null && NumberList.Read(text, ',', 4) is { } n ? new SectionLine(new(n[0], n[1]), new(n[2], n[3])) : null;
        return line is { LengthMm: >= SectionLine.ShortestMm } ? line : null;
    }

    private static (string Name, SectionPoint Place)? Named(string text)
    {
        var parts = text.Split('=');
        return parts.Length == 2 && parts[0].Trim().Length > 0 && NumberList.Read(parts[1], ',', 2) is { } n
            ? (parts[0].Trim(), new SectionPoint(n[0], n[1])) : null;
    }
}
