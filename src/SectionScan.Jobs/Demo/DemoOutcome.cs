using SectionScan.Metrology.Cameras;

namespace SectionScan.Jobs.Demo;

/// <summary>What the demonstration made.</summary>
/// <param name="PagePath">Full path of the page to open.</param>
/// <param name="LibraryPath">Full path of the section library.</param>
/// <param name="Lens">The lens profile.</param>
/// <param name="Ports">The ports, the exemplar first.</param>
/// <param name="AsCast">The port as cast against the exemplar, station by station.</param>
/// <param name="Finished">The finished port against the exemplar, station by station.</param>
public sealed record DemoOutcome(
    string PagePath,
    string LibraryPath,
    LensProfile Lens,
    IReadOnlyList<DigitisedPort> Ports,
    IReadOnlyList<StationComparison> AsCast,
    IReadOnlyList<StationComparison> Finished)
{
    /// <summary>How many sections were measured.</summary>
    public int SectionCount => Ports.Sum(port => port.Sections.Count());
}
