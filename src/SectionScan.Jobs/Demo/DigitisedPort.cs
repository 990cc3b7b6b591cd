using SectionScan.Jobs.Digitising;

namespace SectionScan.Jobs.Demo;

/// <summary>A port of the demonstration with what its photos gave.</summary>
/// <param name="Port">The port.</param>
/// <param name="Photos">Its photos; all of them gave sections.</param>
public sealed record DigitisedPort(DemoPort Port, IReadOnlyList<PhotoOutcome> Photos)
{
    /// <summary>Its sections in the order of the photos.</summary>
    public IEnumerable<DigitisedDocument> Sections => Photos.SelectMany(photo => photo.Documents);

    /// <summary>The section of a station, or null when no slice carries its tag.</summary>
    public DigitisedDocument? At(int station) => Sections.FirstOrDefault(section => section.Document.Section.Station == station);
}
