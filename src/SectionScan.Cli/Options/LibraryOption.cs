using SectionScan.Jobs.Libraries;

namespace SectionScan.Cli.Options;

/// <summary>Which file holds the reference section library.</summary>
internal static class LibraryOption
{
    /// <summary>The environment variable that names the library when no option does.</summary>
    public const string Variable = "SECTIONSCAN_LIBRARY";

    /// <summary>The option's value, else the environment's, else the file in the current folder.</summary>
    public static string PathOf(string? option) =>
        option ?? (Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } named ? named : LibrarySource.DefaultFileName);
}
