using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Porting.Sections;

/// <summary>A port section: its outline at true size with all that is known of its error.</summary>
/// <param name="Station">The station's number, with the flow, or null when no tag and no person told it.</param>
/// <param name="Subject">What it was taken from.</param>
/// <param name="ThicknessMm">Thickness of the slice, mm; zero for an opening.</param>
/// <param name="Outline">The outline, mm, section frame (origin at the centroid, y toward the roof).</param>
/// <param name="ErrorSources">Independent causes of error of the outline; empty when nothing is known of it.</param>
/// <param name="Warnings">What the person should know before trusting it, in plain sentences.</param>
public sealed record Section(
    int? Station,
    SectionSubject Subject,
    double ThicknessMm,
    Outline Outline,
    IReadOnlyList<OutlineErrorSource> ErrorSources,
    IReadOnlyList<string> Warnings);
