using System.ComponentModel;
using SectionScan.Cli.Options;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Compare;

/// <summary>What <c>sectionscan compare</c> is told.</summary>
internal sealed class CompareSettings : AlignmentSettings
{
    [CommandArgument(0, "<REFERENCE>")]
    [Description("The section to compare with: a section document, an outline as DXF, SVG or CSV, or library:NUMBER")]
    public string Reference { get; init; } = string.Empty;

    [CommandArgument(1, "<MEASURED>")]
    [Description("The section in question, named in the same way")]
    public string Measured { get; init; } = string.Empty;

    protected override string UsualAlign => "best-fit";
}
