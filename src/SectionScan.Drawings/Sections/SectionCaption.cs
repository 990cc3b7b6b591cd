using SectionScan.Metrology.Quantities;

namespace SectionScan.Drawings.Sections;

/// <summary>What stands beside the outline on a section's drawing.</summary>
/// <param name="Title">The head line: "Station 3", "Exemplar intake, station 3".</param>
/// <param name="WidthMm">The width across the section's axes, mm.</param>
/// <param name="HeightMm">The height across the section's axes, mm.</param>
public sealed record SectionCaption(string Title, Estimate WidthMm, Estimate HeightMm)
{
    /// <summary>The area in mm², or null to leave it out.</summary>
    public Estimate? AreaMm2 { get; init; }

    /// <summary>Short lines below the head line, such as the photo's name.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>False where the drawing is set into a report, which may show it smaller than true size.</summary>
    public bool SaysTrueSize { get; init; } = true;

    /// <summary>The unit shown.</summary>
    public LengthUnit Unit { get; init; }
}
