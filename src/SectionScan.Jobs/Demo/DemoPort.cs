namespace SectionScan.Jobs.Demo;

/// <summary>One thing that the sample photographs show.</summary>
/// <param name="Name">What it is called on the page.</param>
/// <param name="Folder">The folder of its results.</param>
/// <param name="Photos">The names of its photos.</param>
/// <param name="ThicknessMm">The thickness of its slices; null for openings in sawn metal.</param>
/// <param name="Stage">The stage of the work, as the library keeps it.</param>
/// <param name="Notes">What the library keeps of it.</param>
/// <param name="Tags">Words to find it by.</param>
public sealed record DemoPort(
    string Name, string Folder, IReadOnlyList<string> Photos, double? ThicknessMm, string Stage, string Notes, IReadOnlyList<string> Tags);
