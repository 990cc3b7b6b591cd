using SectionScan.Jobs.Digitising;
using SectionScan.Jobs.Ports;
using SectionScan.Porting.Documents;

namespace SectionScan.Jobs.WholeJobs;

/// <summary>A port of a job with all that was made of it.</summary>
/// <param name="Plan">What the job says of it.</param>
/// <param name="Folder">The folder of its results below the output folder.</param>
/// <param name="Photos">What each photo gave.</param>
/// <param name="Sections">Its sections in the order of the stations, with all measures.</param>
/// <param name="Document">The port document.</param>
/// <param name="Schedule">Schedule, volume, taper.</param>
/// <param name="GasSpeed">Gas speeds, or null without an engine.</param>
public sealed record StudiedPort(
    JobPort Plan, string Folder, IReadOnlyList<PhotoOutcome> Photos, IReadOnlyList<DigitisedDocument> Sections, PortDocument Document,
    ScheduleStudy Schedule, GasSpeedStudy? GasSpeed)
{
    /// <summary>The section of a station, or null.</summary>
    public DigitisedDocument? At(int station) => Sections.FirstOrDefault(section => section.Document.Section.Station == station);
}
