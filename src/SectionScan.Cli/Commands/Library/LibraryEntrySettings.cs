using System.ComponentModel;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Library;

/// <summary>A library command about one entry.</summary>
internal class LibraryEntrySettings : LibrarySettings
{
    [CommandArgument(0, "<ENTRY>")]
    [Description("The entry's number, or its path such as \"Bramble 480 twin/intake 1/station 3\"")]
    public string Entry { get; init; } = string.Empty;
}
