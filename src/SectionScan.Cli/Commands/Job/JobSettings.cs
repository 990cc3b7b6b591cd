using System.ComponentModel;
using SectionScan.Cli.Options;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Job;

/// <summary>What every <c>sectionscan job</c> command is told.</summary>
internal class JobSettings : OutputSettings
{
    [CommandArgument(0, "<JOB>")]
    [Description("The job document")]
    public string Job { get; init; } = string.Empty;
}

/// <summary>What <c>sectionscan job run</c> is told.</summary>
internal sealed class JobRunSettings : JobSettings
{
    [CommandOption("--out <DIR>")]
    [Description("Folder for all results; beside the job document, named after the job, when left out")]
    public string? Out { get; init; }

    [CommandOption("--units <UNITS>")]
    [Description("mm or in: what report and drawings show; the job document and tables for programs are always in millimetres")]
    public UnitOption Units { get; init; }
}
