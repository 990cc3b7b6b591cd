using System.ComponentModel;
using SectionScan.Cli.Options;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Open;

/// <summary>What <c>sectionscan open</c> is told.</summary>
internal sealed class OpenSettings : OutputSettings
{
    private const int HighestPort = 65535;

    [CommandOption("--folder <DIR>")]
    [Description("Folder that holds the jobs; SectionScan in your own folder when left out")]
    public string? Folder { get; init; }

    [CommandOption("--library <FILE>")]
    [Description("The library's file; sectionscan-library.db in the folder of the jobs when left out")]
    public string? Library { get; init; }

    [CommandOption("--port <NUMBER>")]
    [Description("Port on this machine; 5480 when left out, or any when that is taken")]
    public int? Port { get; init; }

    [CommandOption("--no-browser")]
    [Description("Only tell the address, open no browser")]
    public bool IsWithoutBrowser { get; init; }

    public override ValidationResult Validate() => Port is { } port && port is < 1 or > HighestPort
        ? ValidationResult.Error(FormattableString.Invariant($"--port {Port} is out of range: give 1 to {HighestPort}."))
        : ValidationResult.Success();
}
