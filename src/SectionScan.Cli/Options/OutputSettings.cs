using System.ComponentModel;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Options;

/// <summary>The options that every command has.</summary>
public class OutputSettings : CommandSettings
{
    /// <summary>True when one JSON document, and nothing else, is to go to standard output.</summary>
    [CommandOption("--json")]
    [Description("Write one JSON document to standard output and nothing else there")]
    public bool IsJson { get; init; }
}
