using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Cutting;

/// <summary>What <c>sectionscan walls</c> is told.</summary>
internal sealed class WallsSettings : CuttingSettings
{
    [CommandArgument(0, "<PRESENT>")]
    [Description("The section as it is now: a section document, an outline as CSV, or library:NUMBER")]
    public string Present { get; init; } = string.Empty;

    [CommandOption("--target <SECTION>")]
    [Description("The section as it is to become")]
    public string? Target { get; init; }

    [CommandOption("--finished <SECTION>")]
    [Description("The section as measured after cutting")]
    public string? Finished { get; init; }

    public override ValidationResult Validate() =>
        KeepOuts is null ? ValidationResult.Error("--keep-outs is missing: name the table of passages and wall readings.") : base.Validate();
}
