namespace SectionScan.Workbench.Hosting;

/// <summary>What the workbench is started with.</summary>
/// <param name="JobsFolder">The folder that holds the jobs; made when it is not there.</param>
/// <param name="LibraryPath">The reference section library's file; made when something is added.</param>
/// <param name="Port">The port on this machine; null for the usual one, or any when that is taken.</param>
/// <param name="SampleFolders">Where, or above where, the sample photographs may lie.</param>
/// <param name="Program">Name and version of the program, for documents.</param>
/// <param name="Time">The clock.</param>
public sealed record WorkbenchOptions(
    string JobsFolder, string LibraryPath, int? Port, IReadOnlyList<string> SampleFolders, string Program, TimeProvider Time)
{
    /// <summary>The port when none is asked for.</summary>
    public const int UsualPort = 5480;
}
